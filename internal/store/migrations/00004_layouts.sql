-- +goose Up

-- Of an accepted layout, what the entry holds besides, as one JSON object. Empty where the entry is of another kind.
alter table entries add column layout text not null default '';

-- +goose Down
alter table entries drop column layout;
