"""What is done at the nest: catching, counting, opening, holding."""
