"""The app in the browser: the same road and the same sheets as everywhere, and no logic of its own."""
