"""From an evaluation to sheets: tables, drawings and notes as plain data, with no format and no I/O."""
