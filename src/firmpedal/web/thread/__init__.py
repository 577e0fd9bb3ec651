"""Which thread is it? What was measured, typed in a form, and the answer under it."""
