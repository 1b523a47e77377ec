-- Who may do what. A booth may add rows and do nothing else: neither read, nor change, nor remove. An
-- instructor reads what the views show. ON CONFLICT DO NOTHING, which names no column, needs no right to read.

BEGIN;

CREATE ROLE boothlamp_booth NOLOGIN;
CREATE ROLE boothlamp_instructor NOLOGIN;

GRANT USAGE ON SCHEMA boothlamp TO boothlamp_booth, boothlamp_instructor;
GRANT SELECT ON boothlamp.schema_step TO boothlamp_booth, boothlamp_instructor;

GRANT INSERT ON
  boothlamp.boot, boothlamp.sign_in, boothlamp.touch, boothlamp.event, boothlamp.segment,
  boothlamp.segment_window, boothlamp.excursion, boothlamp.trace, boothlamp.forgotten
  TO boothlamp_booth;

GRANT SELECT ON
  boothlamp.current_boot, boothlamp.current_sign_in, boothlamp.current_touch, boothlamp.current_event,
  boothlamp.current_segment, boothlamp.current_segment_window, boothlamp.current_excursion,
  boothlamp.current_trace
  TO boothlamp_instructor;

COMMIT;
