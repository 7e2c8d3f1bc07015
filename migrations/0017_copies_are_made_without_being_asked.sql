-- How copies are made without being asked, where they go, how long they are kept, and from when on one is late.
INSERT INTO settings (name, value) SELECT 'backups', '{"automatic":true,"folder":"","keep":{"days":14,"weeks":8,"months":12,"years":null},"lateDays":2}' WHERE EXISTS (SELECT 1 FROM settings);
