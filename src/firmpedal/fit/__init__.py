"""Joints: which fittings, nuts and sleeves connect a port, bulkhead or line to a line end.

`fit_port`, `fit_hub` and `fit_meeting` answer one joint each and remember their answers;
`why_not` says why two ends do not mate; `violations` checks the closing law on all joints together.
"""
