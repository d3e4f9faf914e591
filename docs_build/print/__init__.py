"""The training PDF."""
