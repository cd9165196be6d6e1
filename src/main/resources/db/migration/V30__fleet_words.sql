-- The words of each unit and of its site by which the fleet list finds it, beside its score: to look
-- through one column takes a small part of the time of putting the words together for each search.
alter table assessment add column words varchar(4000);
update assessment set words = (
  select lower(concat(u.tag, ' ', u.kind, ' ', u.maker, ' ', u.model, ' ', u.refrigerant, ' ',
                      c.code, ' ', c.name, ' ', s.code, ' ', s.name))
  from unit u
  join site s on s.id = u.site_id
  join customer c on c.id = s.customer_id
  where u.id = unit_id);
alter table assessment alter column words set not null;
