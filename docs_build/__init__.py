"""From book to page, phone and paper."""
