"""One file per format: sheets and shapes go out, nothing comes back."""
