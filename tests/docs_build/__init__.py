"""Tests of the way from book to page, phone and paper."""
