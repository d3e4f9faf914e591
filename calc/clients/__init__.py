"""The client, the clock, the price and the record."""
