"""What keeps people unhurt."""
