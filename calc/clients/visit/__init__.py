"""On site, step by step: the fields of the record that keep it, and the times it measures."""
