"""What a calculator needs in a page: form, answer, figure, worker, offline."""
