"""Which lines of planned batches still mean to take something, so that it is not free."""

# A condition on the plan line p: neither weighed nor left out, and its batch neither given up nor, for the
# wrapping, past packing (bars passed bare, or rejected).
STILL_MEANT = """
  NOT EXISTS (SELECT 1 FROM live_movement v WHERE v.plan_line_id = p.id)
  AND NOT EXISTS (SELECT 1 FROM live_reading g WHERE g.plan_line_id = p.id)
  AND NOT EXISTS (SELECT 1 FROM live_decision d WHERE d.batch_id = p.batch_id AND d.verdict = 'discarded')
  AND NOT EXISTS (SELECT 1 FROM live_decision d JOIN live_lot l ON l.id = d.lot_id
                  WHERE l.batch_id = p.batch_id AND d.verdict IN ('passed', 'rejected'))
"""
