"""One module for each generated part of the pages; each gives Markdown and touches no file."""
