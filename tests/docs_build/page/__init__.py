"""Tests of the calculators in the page, on a phone and without a network."""
