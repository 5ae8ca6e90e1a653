"""Open pictograms; `catalogue.toml` says where each came from and under which licence."""
