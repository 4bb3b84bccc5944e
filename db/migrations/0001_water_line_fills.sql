CREATE TABLE `valve_reading` (
	`id` text PRIMARY KEY NOT NULL,
	`outlet_id` text NOT NULL,
	`turns` real NOT NULL,
	`flow_L_per_h` real NOT NULL,
	`loss_K` real NOT NULL,
	`date` text NOT NULL,
	FOREIGN KEY (`outlet_id`) REFERENCES `line_outlet`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `valve_reading_outlet` ON `valve_reading` (`outlet_id`);--> statement-breakpoint
ALTER TABLE `line_outlet` ADD `fill_L` real;--> statement-breakpoint
ALTER TABLE `power_source` ADD `peak_sun_h` real;--> statement-breakpoint
ALTER TABLE `power_source` ADD `limit_W` real;