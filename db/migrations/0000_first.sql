CREATE TABLE `bed` (
	`id` text PRIMARY KEY NOT NULL,
	`code` text NOT NULL,
	`name` text DEFAULT '' NOT NULL,
	`block_id` text NOT NULL,
	`design_id` text NOT NULL,
	`x_m` real DEFAULT 0 NOT NULL,
	`y_m` real DEFAULT 0 NOT NULL,
	`turn_deg` real DEFAULT 0 NOT NULL,
	`position` integer DEFAULT 0 NOT NULL,
	`built_date` text NOT NULL,
	`retired_date` text,
	`retired_because` text,
	`place` text DEFAULT 'ground' NOT NULL,
	`floor_limit_kg_per_m2` real,
	`sun` text,
	`trellis` integer,
	`covered` integer,
	`own_length_m` real,
	`own_width_m` real,
	`own_depth_m` real,
	`own_fill_depth_m` real,
	`own_polygon_m` text,
	`own_basin_fill_m` real,
	`elevation_m` real DEFAULT 0 NOT NULL,
	`notes` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`block_id`) REFERENCES `block`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`design_id`) REFERENCES `design`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `bed_code` ON `bed` (`code`) WHERE "bed"."retired_date" is null;--> statement-breakpoint
CREATE INDEX `bed_block` ON `bed` (`block_id`);--> statement-breakpoint
CREATE INDEX `bed_design` ON `bed` (`design_id`);--> statement-breakpoint
CREATE TABLE `bed_fill` (
	`id` text PRIMARY KEY NOT NULL,
	`bed_id` text NOT NULL,
	`date` text NOT NULL,
	`kind` text NOT NULL,
	`position` integer DEFAULT 0 NOT NULL,
	`material_id` text NOT NULL,
	`loose_L` real NOT NULL,
	`cost_minor` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `bed_fill_bed` ON `bed_fill` (`bed_id`);--> statement-breakpoint
CREATE TABLE `bed_layer` (
	`id` text PRIMARY KEY NOT NULL,
	`bed_id` text NOT NULL,
	`position` integer NOT NULL,
	`material_id` text NOT NULL,
	`amount_kind` text NOT NULL,
	`amount` real,
	`settling_share` real,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `bed_measure` (
	`id` text PRIMARY KEY NOT NULL,
	`bed_id` text NOT NULL,
	`date` text NOT NULL,
	`drop_m` real NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `bed_part` (
	`id` text PRIMARY KEY NOT NULL,
	`bed_id` text NOT NULL,
	`material_id` text NOT NULL,
	`amount` real NOT NULL,
	`price_minor` integer DEFAULT 0 NOT NULL,
	`life_years` real NOT NULL,
	`salvage_share` real DEFAULT 0 NOT NULL,
	`installed_date` text NOT NULL,
	`removed_date` text,
	`reason` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `bed_part_bed` ON `bed_part` (`bed_id`);--> statement-breakpoint
CREATE TABLE `bed_share` (
	`id` text PRIMARY KEY NOT NULL,
	`bed_id` text NOT NULL,
	`name` text NOT NULL,
	`from_share` real NOT NULL,
	`to_share` real NOT NULL,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `block` (
	`id` text PRIMARY KEY NOT NULL,
	`code` text NOT NULL,
	`name` text NOT NULL,
	`x_m` real DEFAULT 0 NOT NULL,
	`y_m` real DEFAULT 0 NOT NULL,
	`outline_m` text,
	`sun` text DEFAULT 'full' NOT NULL,
	`covered` integer DEFAULT false NOT NULL,
	`texture` text DEFAULT 'loam' NOT NULL,
	`notes` text DEFAULT '' NOT NULL,
	`position` integer DEFAULT 0 NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `block_code_unique` ON `block` (`code`);--> statement-breakpoint
CREATE TABLE `design` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`kind` text NOT NULL,
	`outline` text NOT NULL,
	`length_m` real NOT NULL,
	`width_m` real NOT NULL,
	`bottom_length_m` real,
	`bottom_width_m` real,
	`polygon_m` text,
	`depth_m` real NOT NULL,
	`fill_depth_m` real NOT NULL,
	`top_width_m` real,
	`watering` text NOT NULL,
	`basin_length_m` real,
	`basin_width_m` real,
	`basin_depth_m` real,
	`basin_fill_m` real,
	`reservoir_depth_m` real,
	`overflow_m` real,
	`reservoir_void_share` real,
	`core_share` real,
	`mulch_material_id` text,
	`mulch_depth_m` real,
	`barrier_overlap_m` real,
	`trellis` integer DEFAULT false NOT NULL,
	`wall_material` text DEFAULT '' NOT NULL,
	`fill_life_years` real DEFAULT 10 NOT NULL,
	`notes` text DEFAULT '' NOT NULL,
	`retired` integer DEFAULT false NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`mulch_material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	CONSTRAINT "design_sizes" CHECK("design"."length_m" > 0 and "design"."width_m" > 0 and "design"."depth_m" > 0 and "design"."fill_depth_m" >= 0)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `design_name_unique` ON `design` (`name`);--> statement-breakpoint
CREATE TABLE `design_layer` (
	`id` text PRIMARY KEY NOT NULL,
	`design_id` text NOT NULL,
	`position` integer NOT NULL,
	`material_id` text NOT NULL,
	`amount_kind` text NOT NULL,
	`amount` real,
	`settling_share` real,
	FOREIGN KEY (`design_id`) REFERENCES `design`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `design_part` (
	`id` text PRIMARY KEY NOT NULL,
	`design_id` text NOT NULL,
	`position` integer DEFAULT 0 NOT NULL,
	`material_id` text NOT NULL,
	`amount` real NOT NULL,
	`life_years` real NOT NULL,
	`salvage_share` real DEFAULT 0 NOT NULL,
	FOREIGN KEY (`design_id`) REFERENCES `design`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `stockpile` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`material_id` text NOT NULL,
	`shape` text NOT NULL,
	`length_m` real NOT NULL,
	`width_m` real NOT NULL,
	`height_m` real NOT NULL,
	`measured_date` text NOT NULL,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `crop` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`botanical_name` text DEFAULT '' NOT NULL,
	`family` text NOT NULL,
	`crop_group` text NOT NULL,
	`life` text DEFAULT 'annual' NOT NULL,
	`own` integer DEFAULT false NOT NULL,
	`hidden` integer DEFAULT false NOT NULL,
	`notes` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `crop_name_unique` ON `crop` (`name`);--> statement-breakpoint
CREATE TABLE `crop_value` (
	`id` text PRIMARY KEY NOT NULL,
	`crop_id` text NOT NULL,
	`variety_id` text,
	`name` text NOT NULL,
	`number` real,
	`words` text,
	`origin` text NOT NULL,
	`source` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`crop_id`) REFERENCES `crop`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`variety_id`) REFERENCES `variety`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `crop_value_fact` ON `crop_value` (`crop_id`,`variety_id`,`name`,`origin`);--> statement-breakpoint
CREATE TABLE `variety` (
	`id` text PRIMARY KEY NOT NULL,
	`crop_id` text NOT NULL,
	`name` text NOT NULL,
	`notes` text DEFAULT '' NOT NULL,
	`retired` integer DEFAULT false NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`crop_id`) REFERENCES `crop`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `farm` (
	`id` integer PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`invented` integer DEFAULT false NOT NULL,
	`latitude_deg` real NOT NULL,
	`longitude_deg` real NOT NULL,
	`elevation_m` real NOT NULL,
	`coastal` integer DEFAULT false NOT NULL,
	`currency` text DEFAULT 'USD' NOT NULL,
	`minor_digits` integer DEFAULT 2 NOT NULL,
	`unit_system` text DEFAULT 'us' NOT NULL,
	`language` text DEFAULT 'en-US' NOT NULL,
	`wage_minor_per_h` integer DEFAULT 0 NOT NULL,
	`interest_share_per_year` real DEFAULT 0 NOT NULL,
	`parts_method` text DEFAULT 'straight-line' NOT NULL,
	`overhead_key` text DEFAULT 'bed-days' NOT NULL,
	`electricity_minor_per_kWh` real DEFAULT 0 NOT NULL,
	`water_minor_per_m3` real DEFAULT 0 NOT NULL,
	`records_regime` text DEFAULT 'none' NOT NULL,
	`organic_only` integer DEFAULT false NOT NULL,
	`last_frost_early` text,
	`last_frost_median` text,
	`last_frost_late` text,
	`first_frost_early` text,
	`first_frost_median` text,
	`first_frost_late` text,
	`station_id` text,
	`north_deg` real DEFAULT 0 NOT NULL,
	`site_outline_m` text,
	`bucket_L` real DEFAULT 18.927 NOT NULL,
	`barrow_L` real DEFAULT 85 NOT NULL,
	`can_L` real DEFAULT 9 NOT NULL,
	`vehicle_L` real,
	`vehicle_kg` real,
	`contact` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	CONSTRAINT "farm_one_row" CHECK("farm"."id" = 1),
	CONSTRAINT "farm_latitude" CHECK("farm"."latitude_deg" between -90 and 90),
	CONSTRAINT "farm_longitude" CHECK("farm"."longitude_deg" between -180 and 180)
);
--> statement-breakpoint
CREATE TABLE `overhead` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text,
	`name` text NOT NULL,
	`date` text NOT NULL,
	`amount_minor` integer NOT NULL,
	`share_key` text DEFAULT 'bed-days' NOT NULL,
	`category` text DEFAULT 'overhead' NOT NULL
);
--> statement-breakpoint
CREATE TABLE `setting` (
	`name` text PRIMARY KEY NOT NULL,
	`value` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `harvest` (
	`id` text PRIMARY KEY NOT NULL,
	`date` text NOT NULL,
	`planting_id` text NOT NULL,
	`bed_id` text,
	`amount` real NOT NULL,
	`unit` text NOT NULL,
	`weight_kg` real,
	`culls_kg` real DEFAULT 0 NOT NULL,
	`cull_reason` text DEFAULT '' NOT NULL,
	`grade` text DEFAULT 'first' NOT NULL,
	`outlet_id` text,
	`price_minor` integer,
	`labour_min` real,
	`lot_id` text,
	`picker` text DEFAULT '' NOT NULL,
	`conditions` text DEFAULT '' NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`created_at` text NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`planting_id`) REFERENCES `planting`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`outlet_id`) REFERENCES `outlet`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`lot_id`) REFERENCES `harvest_lot`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `harvest_planting` ON `harvest` (`planting_id`);--> statement-breakpoint
CREATE INDEX `harvest_date` ON `harvest` (`date`);--> statement-breakpoint
CREATE INDEX `harvest_lot_index` ON `harvest` (`lot_id`);--> statement-breakpoint
CREATE TABLE `harvest_lot` (
	`id` text PRIMARY KEY NOT NULL,
	`code` text NOT NULL,
	`date` text NOT NULL,
	`parent_codes` text,
	`note` text DEFAULT '' NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `harvest_lot_code_unique` ON `harvest_lot` (`code`);--> statement-breakpoint
CREATE TABLE `sale` (
	`id` text PRIMARY KEY NOT NULL,
	`date` text NOT NULL,
	`outlet_id` text NOT NULL,
	`buyer` text DEFAULT '' NOT NULL,
	`document_number` text DEFAULT '' NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`outlet_id`) REFERENCES `outlet`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sale_date` ON `sale` (`date`);--> statement-breakpoint
CREATE TABLE `sale_line` (
	`id` text PRIMARY KEY NOT NULL,
	`sale_id` text NOT NULL,
	`lot_id` text,
	`harvest_id` text,
	`planting_id` text,
	`amount` real NOT NULL,
	`unit` text NOT NULL,
	`price_minor` integer NOT NULL,
	`paid_minor` integer NOT NULL,
	`outcome` text DEFAULT 'sold' NOT NULL,
	FOREIGN KEY (`sale_id`) REFERENCES `sale`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`lot_id`) REFERENCES `harvest_lot`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`harvest_id`) REFERENCES `harvest`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`planting_id`) REFERENCES `planting`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `sale_line_sale` ON `sale_line` (`sale_id`);--> statement-breakpoint
CREATE INDEX `sale_line_planting` ON `sale_line` (`planting_id`);--> statement-breakpoint
CREATE INDEX `sale_line_lot` ON `sale_line` (`lot_id`);--> statement-breakpoint
CREATE TABLE `sale_unit` (
	`id` text PRIMARY KEY NOT NULL,
	`crop_id` text,
	`unit` text NOT NULL,
	`net_kg` real NOT NULL,
	`source` text DEFAULT 'own weighing' NOT NULL
);
--> statement-breakpoint
CREATE TABLE `material` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`kind` text NOT NULL,
	`base_unit` text NOT NULL,
	`dry_density_kg_per_m3` real,
	`moist_density_kg_per_m3` real,
	`moisture_share` real,
	`capacity_share` real,
	`porosity_share` real,
	`void_share` real,
	`swell_share` real,
	`settling_first_share` real,
	`settling_later_share` real,
	`n_share` real,
	`p2o5_share` real,
	`k2o_share` real,
	`ca_share` real,
	`mg_share` real,
	`s_share` real,
	`first_year_n_share` real,
	`c_to_n` real,
	`neutralising_share` real,
	`fineness_share` real,
	`organic_use` text DEFAULT 'unknown' NOT NULL,
	`animal_origin` text DEFAULT 'none' NOT NULL,
	`dusty` integer DEFAULT false NOT NULL,
	`registration_number` text,
	`inside_diameter_m` real,
	`bore_diameter_m` real,
	`power_W` real,
	`life_years` real,
	`max_rate_kg_per_m2` real,
	`crop_id` text,
	`variety_id` text,
	`seeds_per_g` real,
	`germination_share` real,
	`cells` integer,
	`own` integer DEFAULT false NOT NULL,
	`retired` integer DEFAULT false NOT NULL,
	`source` text DEFAULT '' NOT NULL,
	`notes` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `material_name_unique` ON `material` (`name`);--> statement-breakpoint
CREATE TABLE `offer` (
	`id` text PRIMARY KEY NOT NULL,
	`supplier_id` text NOT NULL,
	`material_id` text NOT NULL,
	`name` text NOT NULL,
	`package_amount` real NOT NULL,
	`price_minor` integer NOT NULL,
	`minimum_packages` integer DEFAULT 1 NOT NULL,
	`lead_days` integer,
	`package_weight_kg` real,
	`priced_date` text NOT NULL,
	`retired` integer DEFAULT false NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`supplier_id`) REFERENCES `supplier`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `offer_material` ON `offer` (`material_id`);--> statement-breakpoint
CREATE TABLE `offer_break` (
	`id` text PRIMARY KEY NOT NULL,
	`offer_id` text NOT NULL,
	`from_packages` integer NOT NULL,
	`price_minor` integer NOT NULL,
	FOREIGN KEY (`offer_id`) REFERENCES `offer`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `offer_price` (
	`id` text PRIMARY KEY NOT NULL,
	`offer_id` text NOT NULL,
	`date` text NOT NULL,
	`price_minor` integer NOT NULL,
	FOREIGN KEY (`offer_id`) REFERENCES `offer`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `substitute` (
	`id` text PRIMARY KEY NOT NULL,
	`material_id` text NOT NULL,
	`instead_id` text NOT NULL,
	`ratio` real DEFAULT 1 NOT NULL,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`instead_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE UNIQUE INDEX `substitute_pair` ON `substitute` (`material_id`,`instead_id`);--> statement-breakpoint
CREATE TABLE `supplier` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`contact` text DEFAULT '' NOT NULL,
	`delivery_fee_minor` integer DEFAULT 0 NOT NULL,
	`free_delivery_from_minor` integer,
	`minimum_order_minor` integer DEFAULT 0 NOT NULL,
	`tax_share` real DEFAULT 0 NOT NULL,
	`lead_days` integer DEFAULT 0 NOT NULL,
	`pick_up` integer DEFAULT false NOT NULL,
	`retired` integer DEFAULT false NOT NULL,
	`notes` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `supplier_name_unique` ON `supplier` (`name`);--> statement-breakpoint
CREATE TABLE `demand` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text NOT NULL,
	`outlet_id` text NOT NULL,
	`crop_id` text NOT NULL,
	`kind` text NOT NULL,
	`from_date` text NOT NULL,
	`to_date` text NOT NULL,
	`amount_per_week` real NOT NULL,
	`unit` text NOT NULL,
	`price_minor` integer NOT NULL,
	`penalty_minor` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`season_id`) REFERENCES `season`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`outlet_id`) REFERENCES `outlet`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`crop_id`) REFERENCES `crop`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `outlet` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`kind` text NOT NULL,
	`qualified_end_user` integer DEFAULT false NOT NULL,
	`contact` text DEFAULT '' NOT NULL,
	`retired` integer DEFAULT false NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `outlet_name_unique` ON `outlet` (`name`);--> statement-breakpoint
CREATE TABLE `planting` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text NOT NULL,
	`crop_id` text NOT NULL,
	`variety_id` text,
	`succession_id` text,
	`number` integer DEFAULT 1 NOT NULL,
	`method` text NOT NULL,
	`dates_by` text DEFAULT 'days' NOT NULL,
	`sow_date` text,
	`pot_on_date` text,
	`in_bed_date` text NOT NULL,
	`first_harvest_date` text NOT NULL,
	`last_harvest_date` text NOT NULL,
	`clear_date` text NOT NULL,
	`sown_actual` text,
	`in_bed_actual` text,
	`first_harvest_actual` text,
	`last_harvest_actual` text,
	`cleared_actual` text,
	`layout` text DEFAULT 'staggered' NOT NULL,
	`in_row_m` real NOT NULL,
	`row_m` real NOT NULL,
	`margin_m` real DEFAULT 0 NOT NULL,
	`plants` integer NOT NULL,
	`plants_actual` integer,
	`seeds_per_hole` integer DEFAULT 1 NOT NULL,
	`cells` integer,
	`yield_unit` text DEFAULT 'kg' NOT NULL,
	`yield_low` real,
	`yield_typical` real,
	`yield_high` real,
	`price_minor` integer,
	`state` text DEFAULT 'planned' NOT NULL,
	`pinned` integer DEFAULT false NOT NULL,
	`seed_lot_id` text,
	`seed_organic` text DEFAULT 'unknown' NOT NULL,
	`touches_soil` integer,
	`notes` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`season_id`) REFERENCES `season`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`crop_id`) REFERENCES `crop`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`variety_id`) REFERENCES `variety`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`succession_id`) REFERENCES `succession`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE INDEX `planting_season` ON `planting` (`season_id`);--> statement-breakpoint
CREATE INDEX `planting_crop` ON `planting` (`crop_id`);--> statement-breakpoint
CREATE TABLE `planting_bed` (
	`id` text PRIMARY KEY NOT NULL,
	`planting_id` text NOT NULL,
	`bed_id` text NOT NULL,
	`from_share` real DEFAULT 0 NOT NULL,
	`to_share` real DEFAULT 1 NOT NULL,
	`plants` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`planting_id`) REFERENCES `planting`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `planting_bed_bed` ON `planting_bed` (`bed_id`);--> statement-breakpoint
CREATE INDEX `planting_bed_planting` ON `planting_bed` (`planting_id`);--> statement-breakpoint
CREATE TABLE `price` (
	`id` text PRIMARY KEY NOT NULL,
	`outlet_id` text NOT NULL,
	`crop_id` text NOT NULL,
	`unit` text NOT NULL,
	`grade` text DEFAULT 'first' NOT NULL,
	`price_minor` integer NOT NULL,
	`from_date` text NOT NULL,
	FOREIGN KEY (`outlet_id`) REFERENCES `outlet`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`crop_id`) REFERENCES `crop`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `proposal` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text NOT NULL,
	`made_at` text NOT NULL,
	`goal` text NOT NULL,
	`seed` integer NOT NULL,
	`effort` text NOT NULL,
	`program` text NOT NULL,
	`result` text NOT NULL,
	FOREIGN KEY (`season_id`) REFERENCES `season`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `season` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`start_date` text NOT NULL,
	`end_date` text NOT NULL,
	`state` text NOT NULL,
	`copied_from_id` text,
	`bench_area_m2` real,
	`labour_h_per_week` real,
	`revision` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `season_name_unique` ON `season` (`name`);--> statement-breakpoint
CREATE TABLE `succession` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text NOT NULL,
	`crop_id` text NOT NULL,
	`interval_days` integer NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`season_id`) REFERENCES `season`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`crop_id`) REFERENCES `crop`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `application` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text,
	`material_id` text NOT NULL,
	`lot_id` text,
	`date` text NOT NULL,
	`time` text DEFAULT '' NOT NULL,
	`state` text NOT NULL,
	`method` text DEFAULT 'broadcast' NOT NULL,
	`incorporated_date` text,
	`reason` text DEFAULT '' NOT NULL,
	`who` text DEFAULT '' NOT NULL,
	`weather` text DEFAULT '' NOT NULL,
	`equipment` text DEFAULT '' NOT NULL,
	`target_pest` text DEFAULT '' NOT NULL,
	`re_entry_h` real,
	`pre_harvest_days` integer,
	`note` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`lot_id`) REFERENCES `material_lot`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `application_bed` (
	`id` text PRIMARY KEY NOT NULL,
	`application_id` text NOT NULL,
	`bed_id` text NOT NULL,
	`planting_id` text,
	`amount_kg` real NOT NULL,
	`cost_minor` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`application_id`) REFERENCES `application`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`planting_id`) REFERENCES `planting`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `application_bed_bed` ON `application_bed` (`bed_id`);--> statement-breakpoint
CREATE INDEX `application_bed_application` ON `application_bed` (`application_id`);--> statement-breakpoint
CREATE TABLE `compost_batch` (
	`id` text PRIMARY KEY NOT NULL,
	`code` text NOT NULL,
	`started_date` text NOT NULL,
	`cured_date` text,
	`method` text NOT NULL,
	`place` text DEFAULT '' NOT NULL,
	`material_id` text,
	`made_L` real,
	`note` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `compost_batch_code_unique` ON `compost_batch` (`code`);--> statement-breakpoint
CREATE TABLE `compost_ingredient` (
	`id` text PRIMARY KEY NOT NULL,
	`batch_id` text NOT NULL,
	`material_id` text NOT NULL,
	`amount_kg` real NOT NULL,
	FOREIGN KEY (`batch_id`) REFERENCES `compost_batch`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `compost_reading` (
	`id` text PRIMARY KEY NOT NULL,
	`batch_id` text NOT NULL,
	`date` text NOT NULL,
	`temperature_C` real,
	`turned` integer DEFAULT false NOT NULL,
	`moisture` text DEFAULT '' NOT NULL,
	`who` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`batch_id`) REFERENCES `compost_batch`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `feeding_plan` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text NOT NULL,
	`need_by` text DEFAULT 'soil-test' NOT NULL,
	`tolerance_share` real DEFAULT 0.1 NOT NULL,
	`material_ids` text NOT NULL,
	`scoop_L` real DEFAULT 0.25 NOT NULL,
	`splits` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `feeding_plan_season_id_unique` ON `feeding_plan` (`season_id`);--> statement-breakpoint
CREATE TABLE `soil_test` (
	`id` text PRIMARY KEY NOT NULL,
	`date` text NOT NULL,
	`laboratory` text DEFAULT '' NOT NULL,
	`sample` text DEFAULT '' NOT NULL,
	`kind` text DEFAULT 'soil' NOT NULL,
	`method` text DEFAULT 'mehlich-3' NOT NULL,
	`depth_m` real,
	`texture` text,
	`ph` real,
	`buffer_ph` real,
	`buffer_method` text,
	`organic_matter_share` real,
	`cec_meq_per_100g` real,
	`ec_dS_per_m` real,
	`lead_mg_per_kg` real,
	`note` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE TABLE `soil_test_bed` (
	`id` text PRIMARY KEY NOT NULL,
	`test_id` text NOT NULL,
	`bed_id` text NOT NULL,
	FOREIGN KEY (`test_id`) REFERENCES `soil_test`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `soil_test_bed_bed` ON `soil_test_bed` (`bed_id`);--> statement-breakpoint
CREATE INDEX `soil_test_bed_test` ON `soil_test_bed` (`test_id`);--> statement-breakpoint
CREATE TABLE `soil_test_value` (
	`id` text PRIMARY KEY NOT NULL,
	`test_id` text NOT NULL,
	`nutrient` text NOT NULL,
	`value_mg_per_kg` real NOT NULL,
	`entered_value` real NOT NULL,
	`entered_unit` text NOT NULL,
	FOREIGN KEY (`test_id`) REFERENCES `soil_test`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `tea_batch` (
	`id` text PRIMARY KEY NOT NULL,
	`code` text NOT NULL,
	`compost_batch_id` text,
	`started_at` text NOT NULL,
	`use_by_at` text NOT NULL,
	`tank_L` real NOT NULL,
	`compost_kg` real NOT NULL,
	`dilution` real NOT NULL,
	`additives` text DEFAULT '' NOT NULL,
	`water_source` text DEFAULT '' NOT NULL,
	`applied_date` text,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`compost_batch_id`) REFERENCES `compost_batch`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE UNIQUE INDEX `tea_batch_code_unique` ON `tea_batch` (`code`);--> statement-breakpoint
CREATE TABLE `tea_batch_bed` (
	`id` text PRIMARY KEY NOT NULL,
	`batch_id` text NOT NULL,
	`bed_id` text NOT NULL,
	`volume_L` real NOT NULL,
	FOREIGN KEY (`batch_id`) REFERENCES `tea_batch`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `budget` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text NOT NULL,
	`category` text NOT NULL,
	`month` integer,
	`amount_minor` integer NOT NULL
);
--> statement-breakpoint
CREATE TABLE `material_lot` (
	`id` text PRIMARY KEY NOT NULL,
	`material_id` text NOT NULL,
	`code` text NOT NULL,
	`supplier_id` text,
	`expires_date` text,
	`germination_share` real,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supplier_id`) REFERENCES `supplier`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `need_choice` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text,
	`need_key` text,
	`material_id` text NOT NULL,
	`amount` real,
	`reason` text DEFAULT '' NOT NULL,
	`wanted_date` text,
	`supplier_id` text,
	`left_out` integer DEFAULT false NOT NULL,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`supplier_id`) REFERENCES `supplier`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `purchase` (
	`id` text PRIMARY KEY NOT NULL,
	`supplier_id` text NOT NULL,
	`ordered_date` text NOT NULL,
	`received_date` text,
	`delivery_minor` integer DEFAULT 0 NOT NULL,
	`tax_minor` integer DEFAULT 0 NOT NULL,
	`document_number` text DEFAULT '' NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`supplier_id`) REFERENCES `supplier`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `purchase_line` (
	`id` text PRIMARY KEY NOT NULL,
	`purchase_id` text NOT NULL,
	`material_id` text NOT NULL,
	`offer_id` text,
	`packages` real NOT NULL,
	`received_packages` real DEFAULT 0 NOT NULL,
	`returned_packages` real DEFAULT 0 NOT NULL,
	`package_amount` real NOT NULL,
	`price_minor` integer NOT NULL,
	`lot_id` text,
	`category` text DEFAULT 'supplies' NOT NULL,
	FOREIGN KEY (`purchase_id`) REFERENCES `purchase`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`offer_id`) REFERENCES `offer`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`lot_id`) REFERENCES `material_lot`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `purchase_line_purchase` ON `purchase_line` (`purchase_id`);--> statement-breakpoint
CREATE TABLE `shopping_line` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text NOT NULL,
	`offer_id` text NOT NULL,
	`packages` integer NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`ticked` integer DEFAULT false NOT NULL,
	`purchase_id` text,
	FOREIGN KEY (`offer_id`) REFERENCES `offer`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`purchase_id`) REFERENCES `purchase`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `stock_move` (
	`id` text PRIMARY KEY NOT NULL,
	`material_id` text NOT NULL,
	`date` text NOT NULL,
	`kind` text NOT NULL,
	`amount` real NOT NULL,
	`value_minor` integer DEFAULT 0 NOT NULL,
	`lot_id` text,
	`bed_id` text,
	`planting_id` text,
	`purchase_line_id` text,
	`application_id` text,
	`who` text DEFAULT '' NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`flagged` integer DEFAULT false NOT NULL,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`lot_id`) REFERENCES `material_lot`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`planting_id`) REFERENCES `planting`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`purchase_line_id`) REFERENCES `purchase_line`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `stock_move_material` ON `stock_move` (`material_id`,`date`);--> statement-breakpoint
CREATE TABLE `undo_change` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`step_id` integer NOT NULL,
	`statement` text NOT NULL
);
--> statement-breakpoint
CREATE INDEX `undo_change_step` ON `undo_change` (`step_id`);--> statement-breakpoint
CREATE TABLE `undo_step` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`note` text NOT NULL,
	`made_at` text NOT NULL,
	`undone` integer DEFAULT false NOT NULL
);
--> statement-breakpoint
CREATE TABLE `line_node` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`kind` text NOT NULL,
	`name` text NOT NULL,
	`x_m` real DEFAULT 0 NOT NULL,
	`y_m` real DEFAULT 0 NOT NULL,
	`elevation_m` real DEFAULT 0 NOT NULL,
	`zone` integer DEFAULT 1 NOT NULL,
	`position` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `line_node_line` ON `line_node` (`line_id`);--> statement-breakpoint
CREATE TABLE `line_outlet` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`node_id` text NOT NULL,
	`bed_id` text,
	`kind` text NOT NULL,
	`outlet_m` real NOT NULL,
	`bore_m` real NOT NULL,
	`drowned` integer DEFAULT false NOT NULL,
	`open_K` real DEFAULT 15 NOT NULL,
	`set_K` real,
	`calibrated` integer DEFAULT false NOT NULL,
	`measured_L_per_h` real,
	`measured_date` text,
	`want_share` real DEFAULT 1 NOT NULL,
	`emitters` integer,
	`emitter_L_per_h` real,
	`emitter_exponent` real,
	`emitter_head_m` real,
	`emitter_Cv` real,
	`position` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`node_id`) REFERENCES `line_node`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `line_outlet_line` ON `line_outlet` (`line_id`);--> statement-breakpoint
CREATE INDEX `line_outlet_bed` ON `line_outlet` (`bed_id`);--> statement-breakpoint
CREATE TABLE `line_run` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`from_node_id` text NOT NULL,
	`to_node_id` text NOT NULL,
	`length_m` real NOT NULL,
	`inside_diameter_m` real NOT NULL,
	`roughness_m` real DEFAULT 0.0000015 NOT NULL,
	`fitting_K` real DEFAULT 0 NOT NULL,
	`tee_bore_m` real,
	`material_id` text,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`from_node_id`) REFERENCES `line_node`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`to_node_id`) REFERENCES `line_node`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `line_run_line` ON `line_run` (`line_id`);--> statement-breakpoint
CREATE TABLE `power_source` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`kind` text NOT NULL,
	`battery` text,
	`capacity_Wh` real,
	`usable_share` real,
	`inverter_share` real,
	`self_discharge_share_per_month` real,
	`controller_W` real DEFAULT 0 NOT NULL,
	`idle_W` real DEFAULT 0 NOT NULL,
	`idle_off_h` real,
	`panel_W` real,
	`panel_loss_share` real,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `pump` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`name` text NOT NULL,
	`material_id` text,
	`curve_kind` text NOT NULL,
	`power_W` real NOT NULL,
	`inlet_height_m` real DEFAULT 0 NOT NULL,
	`count` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`material_id`) REFERENCES `material`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE TABLE `pump_point` (
	`id` text PRIMARY KEY NOT NULL,
	`pump_id` text NOT NULL,
	`flow_L_per_h` real NOT NULL,
	`head_m` real NOT NULL,
	FOREIGN KEY (`pump_id`) REFERENCES `pump`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `timer_event` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text NOT NULL,
	`month` integer NOT NULL,
	`every_days` integer NOT NULL,
	`start` text NOT NULL,
	`run_min` real NOT NULL,
	`zone` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `water_entry` (
	`id` text PRIMARY KEY NOT NULL,
	`date` text NOT NULL,
	`line_id` text,
	`bed_id` text,
	`volume_L` real NOT NULL,
	`run_min` real,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE set null,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE TABLE `water_line` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`supply` text NOT NULL,
	`supply_source` text DEFAULT 'public' NOT NULL,
	`reservoir_L` real,
	`reservoir_area_m2` real,
	`reservoir_base_m` real,
	`high_level_m` real,
	`low_level_m` real,
	`usable_share` real DEFAULT 0.9 NOT NULL,
	`float_top_up_L_per_day` real,
	`tap_head_m` real,
	`tap_flow_L_per_min` real,
	`vented` integer DEFAULT false NOT NULL,
	`vent_hole_m` real,
	`food_grade` integer DEFAULT false NOT NULL,
	`reserve_head_m` real DEFAULT 0.1 NOT NULL,
	`water_C` real DEFAULT 20 NOT NULL,
	`roof_area_m2` real,
	`roof_share` real,
	`first_flush_mm` real,
	`level_L` real,
	`level_date` text,
	`notes` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL
);
--> statement-breakpoint
CREATE UNIQUE INDEX `water_line_name_unique` ON `water_line` (`name`);--> statement-breakpoint
CREATE TABLE `water_test` (
	`id` text PRIMARY KEY NOT NULL,
	`line_id` text,
	`date` text NOT NULL,
	`point` text DEFAULT '' NOT NULL,
	`analyte` text NOT NULL,
	`value` real NOT NULL,
	`unit` text NOT NULL,
	`method` text DEFAULT '' NOT NULL,
	`laboratory` text DEFAULT '' NOT NULL,
	`action` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`line_id`) REFERENCES `water_line`(`id`) ON UPDATE no action ON DELETE set null
);
--> statement-breakpoint
CREATE TABLE `station` (
	`id` text PRIMARY KEY NOT NULL,
	`name` text NOT NULL,
	`latitude_deg` real NOT NULL,
	`longitude_deg` real NOT NULL,
	`elevation_m` real NOT NULL,
	`wind_height_m` real DEFAULT 2 NOT NULL,
	`source` text NOT NULL
);
--> statement-breakpoint
CREATE TABLE `weather_day` (
	`station_id` text NOT NULL,
	`date` text NOT NULL,
	`tmin_C` real,
	`tmax_C` real,
	`rain_mm` real,
	`wind_m_per_s` real,
	`rhmin_share` real,
	`rhmax_share` real,
	`radiation_MJ_per_m2` real,
	`dew_point_C` real,
	`flags` text DEFAULT '' NOT NULL,
	`filled` integer DEFAULT false NOT NULL,
	PRIMARY KEY(`station_id`, `date`),
	FOREIGN KEY (`station_id`) REFERENCES `station`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE TABLE `labour_entry` (
	`id` text PRIMARY KEY NOT NULL,
	`date` text NOT NULL,
	`task` text NOT NULL,
	`minutes` real NOT NULL,
	`people` integer DEFAULT 1 NOT NULL,
	`wage_minor_per_h` integer NOT NULL,
	`standard` integer DEFAULT false NOT NULL,
	`bed_id` text,
	`block_id` text,
	`planting_id` text,
	`harvest_id` text,
	`who` text DEFAULT '' NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`block_id`) REFERENCES `block`(`id`) ON UPDATE no action ON DELETE no action,
	FOREIGN KEY (`planting_id`) REFERENCES `planting`(`id`) ON UPDATE no action ON DELETE no action
);
--> statement-breakpoint
CREATE INDEX `labour_date` ON `labour_entry` (`date`);--> statement-breakpoint
CREATE INDEX `labour_planting` ON `labour_entry` (`planting_id`);--> statement-breakpoint
CREATE TABLE `log_entry` (
	`id` text PRIMARY KEY NOT NULL,
	`kind` text NOT NULL,
	`date` text NOT NULL,
	`time` text DEFAULT '' NOT NULL,
	`created_at` text NOT NULL,
	`place` text DEFAULT '' NOT NULL,
	`who` text DEFAULT '' NOT NULL,
	`observed` text DEFAULT '' NOT NULL,
	`details` text NOT NULL,
	`corrects_id` text,
	`reviewed_by` text,
	`reviewed_date` text
);
--> statement-breakpoint
CREATE TABLE `task` (
	`id` text PRIMARY KEY NOT NULL,
	`season_id` text,
	`kind` text NOT NULL,
	`title` text NOT NULL,
	`due_date` text NOT NULL,
	`state` text DEFAULT 'open' NOT NULL,
	`done_date` text,
	`origin_key` text,
	`planting_id` text,
	`bed_id` text,
	`note` text DEFAULT '' NOT NULL,
	`revision` integer DEFAULT 1 NOT NULL,
	FOREIGN KEY (`planting_id`) REFERENCES `planting`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`bed_id`) REFERENCES `bed`(`id`) ON UPDATE no action ON DELETE cascade
);
--> statement-breakpoint
CREATE INDEX `task_due` ON `task` (`due_date`);--> statement-breakpoint
CREATE INDEX `task_origin` ON `task` (`origin_key`);