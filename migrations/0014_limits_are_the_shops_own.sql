-- How near and how steady each kind of clock has to go is the shop's own setting; fourteen-day and year movements have a policy.
UPDATE settings SET value = json_object(
    '30-hour', json(value -> '$."30-hour"'),
    '8-day', json(value -> '$."8-day"'),
    '14-day', json('{"stages":[{"name":"out of the case","days":7},{"name":"in the case","winds":1}],"readingEveryDays":1}'),
    '31-day', json(value -> '$."31-day"'),
    'year', json('{"stages":[{"name":"out of the case","days":14},{"name":"in the case","days":14}],"readingEveryDays":2}'),
    '400-day', json(value -> '$."400-day"')
  ) WHERE name = 'runIn';
INSERT INTO settings (name, value) SELECT 'limits', '{"seconds-pendulum":{"perDay":"3","steady":"1.5"},"wall-dead-beat":{"perDay":"8","steady":"3"},"weight-anchor":{"perDay":"15","steady":"5"},"spring-recoil":{"perDay":"34","steady":"10"},"platform":{"perDay":"30","steady":"10"},"cuckoo":{"perDay":"26","steady":"20"},"torsion":{"perDay":"43","steady":"30"},"verge":{"perDay":"900","steady":"200"}}' WHERE EXISTS (SELECT 1 FROM settings);
