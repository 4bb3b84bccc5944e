CREATE TABLE `bed_plan` (
	`id` text PRIMARY KEY NOT NULL,
	`design_id` text NOT NULL,
	`count` integer NOT NULL,
	`wanted_date` text NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`design_id`) REFERENCES `design`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `line_part` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`material_id` text NOT NULL,
	`amount` real NOT NULL,
	`price_minor` integer DEFAULT 0 NOT NULL,
	`life_years` real NOT NULL,
	`installed_date` text NOT NULL,
	`removed_date` text,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `line_part_line` ON `line_part` (`line_id`);--> statement-breakpoint
ALTER TABLE `bed_fill` ADD `priced_minor` integer DEFAULT 0 NOT NULL;