-- +goose Up
create table pieces (
  id         text   primary key,
  name       text   not null unique check (name <> ''),
  start_text text   not null,
  entry      text   not null unique,
  actor      text   not null check (actor <> ''),
  created    bigint not null
);

create table entries (
  piece      text   not null references pieces (id),
  number     bigint not null check (number >= 1),
  id         text   not null unique,
  actor      text   not null check (actor <> ''),
  base       bigint not null check (base >= 0 and base < number),
  written    bigint not null,
  kind       text   not null check (kind <> ''),
  path       text   not null,
  old_value  text   not null,
  new_value  text   not null,
  names      text   not null,
  primary key (piece, number)
);

-- The text after the last entry: a cache that is made anew whenever it is missing or behind.
create table standing (
  piece      text   primary key references pieces (id),
  number     bigint not null check (number >= 0),
  body       text   not null
);

create table shop (
  number     bigint primary key check (number >= 1),
  id         text   not null unique,
  actor      text   not null check (actor <> ''),
  base       bigint not null check (base >= 0 and base < number),
  written    bigint not null,
  body       text   not null
);

-- +goose Down
drop table shop;
drop table standing;
drop table entries;
drop table pieces;
