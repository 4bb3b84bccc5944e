ALTER TABLE `bed_fill` ADD `unpriced_L` real DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `bed_part` ADD `unpriced_amount` real DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE `farm` ADD `tray_mix_id` text DEFAULT 'mix-seedling' NOT NULL;--> statement-breakpoint
ALTER TABLE `stock_move` ADD `part_id` text;--> statement-breakpoint
ALTER TABLE `stock_move` ADD `unpriced` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `line_part` ADD `unpriced_amount` real DEFAULT 0 NOT NULL;--> statement-breakpoint
UPDATE `material` SET `own` = 0 WHERE `id` <> 'soil-own-loose';--> statement-breakpoint
UPDATE `stock_move` SET `part_id` = (SELECT p.`id` FROM `bed_part` p WHERE p.`bed_id` = `stock_move`.`bed_id` AND p.`material_id` = `stock_move`.`material_id` AND p.`installed_date` = `stock_move`.`date` LIMIT 1) WHERE `kind` = 'use' AND `bed_id` IS NOT NULL AND (`reason` LIKE 'Built %' OR `reason` LIKE 'Part replaced: %');--> statement-breakpoint
UPDATE `stock_move` SET `part_id` = (SELECT p.`id` FROM `line_part` p WHERE p.`material_id` = `stock_move`.`material_id` AND p.`installed_date` = `stock_move`.`date` LIMIT 1) WHERE `kind` = 'use' AND `bed_id` IS NULL AND `reason` LIKE 'Into %';--> statement-breakpoint
UPDATE `bed_fill` SET `unpriced_L` = `loose_L` WHERE `cost_minor` = 0 AND `kind` <> 'taken-out' AND `material_id` IN (SELECT `id` FROM `material` WHERE `own` = 0) AND NOT EXISTS (SELECT 1 FROM `stock_move` m WHERE m.`kind` = 'use' AND m.`bed_id` = `bed_fill`.`bed_id` AND m.`material_id` = `bed_fill`.`material_id` AND m.`date` = `bed_fill`.`date`);--> statement-breakpoint
UPDATE `bed_part` SET `unpriced_amount` = `amount` WHERE `price_minor` = 0 AND `material_id` IN (SELECT `id` FROM `material` WHERE `own` = 0);--> statement-breakpoint
UPDATE `line_part` SET `unpriced_amount` = `amount` WHERE `price_minor` = 0 AND `material_id` IN (SELECT `id` FROM `material` WHERE `own` = 0);--> statement-breakpoint
UPDATE `stock_move` SET `unpriced` = 1 WHERE `amount` > 0 AND `value_minor` = 0 AND `kind` IN ('opening', 'correction') AND `material_id` IN (SELECT `id` FROM `material` WHERE `own` = 0);--> statement-breakpoint
UPDATE `stock_move` SET `unpriced` = 1 WHERE `amount` < 0 AND `value_minor` = 0 AND `kind` = 'use' AND `material_id` IN (SELECT `id` FROM `material` WHERE `own` = 0) AND NOT EXISTS (SELECT 1 FROM `stock_move` m WHERE m.`material_id` = `stock_move`.`material_id` AND m.`amount` > 0);
