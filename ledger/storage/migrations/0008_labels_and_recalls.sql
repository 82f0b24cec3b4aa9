-- What labels and recalls keep of their own; each table stands under the words that say why it is there.

-- What a label shows of her beside the name she trades under: her web address, printed as a code, and a line of her own.
ALTER TABLE settings_revision ADD COLUMN web TEXT;
ALTER TABLE settings_revision ADD COLUMN line TEXT;
