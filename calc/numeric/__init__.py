"""Root finding, minimising, interpolation and distributions: one home each, plain :mod:`math`."""
