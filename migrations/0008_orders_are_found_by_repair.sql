CREATE INDEX part_orders_of_repair ON part_orders (repair_id) WHERE repair_id IS NOT NULL;
