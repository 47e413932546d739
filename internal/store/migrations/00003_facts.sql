-- +goose Up

-- Of a fact and of an asked change, what the entry holds besides, as one JSON object each; of an answer, whether it
-- is a yes. Empty and 0 where the entry is of another kind.
alter table entries add column fact text not null default '';
alter table entries add column asked text not null default '';
alter table entries add column yes bigint not null default 0 check (yes in (0, 1));

-- +goose Down
alter table entries drop column yes;
alter table entries drop column asked;
alter table entries drop column fact;
