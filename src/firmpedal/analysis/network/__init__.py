"""The circuit under pressure: what stands where for any pedals pressed, what stays, what one leak costs."""
