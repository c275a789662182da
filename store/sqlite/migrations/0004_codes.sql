-- A code lives for ten minutes of running time, whatever becomes of the clock: ends_up is on the count that the machine keeps
-- since it was started, in ms. Codes of before end here.
DELETE FROM pair_codes;
ALTER TABLE pair_codes ADD COLUMN ends_up INTEGER NOT NULL DEFAULT 0;
