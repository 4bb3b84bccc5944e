ALTER TABLE `feeding_plan` ADD `split_weeks` integer DEFAULT 4 NOT NULL;--> statement-breakpoint
ALTER TABLE `feeding_plan` ADD `first_date` text;--> statement-breakpoint
ALTER TABLE `feeding_plan` ADD `target_ph` real DEFAULT 6.5 NOT NULL;--> statement-breakpoint
ALTER TABLE `feeding_plan` ADD `lime_material_id` text REFERENCES material(id);--> statement-breakpoint
ALTER TABLE `feeding_plan` ADD `sulfur_material_id` text REFERENCES material(id);--> statement-breakpoint
ALTER TABLE `feeding_plan` ADD `organic_only` integer DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE `feeding_plan` ADD `water_nitrate_n_mg_per_L` real;--> statement-breakpoint
ALTER TABLE `feeding_plan` ADD `water_L_per_m2` real;