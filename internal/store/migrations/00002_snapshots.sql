-- +goose Up

-- The text after an entry, as of the whole log: the last one, and others on the way to it, so that taking an
-- entry back needs no replay from the start. A cache: what is missing is made anew.
create table snapshots (
  piece      text   not null references pieces (id),
  number     bigint not null check (number >= 0),
  body       text   not null,
  primary key (piece, number)
);

insert into snapshots (piece, number, body) select piece, number, body from standing;

drop table standing;

-- +goose Down
create table standing (
  piece      text   primary key references pieces (id),
  number     bigint not null check (number >= 0),
  body       text   not null
);

insert into standing (piece, number, body)
  select s.piece, s.number, s.body from snapshots s
  where s.number = (select max(t.number) from snapshots t where t.piece = s.piece);

drop table snapshots;
