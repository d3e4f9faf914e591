"""What lives in the nest: species, colony, season, brood."""
