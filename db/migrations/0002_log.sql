CREATE TABLE "checkpoints" (
	"tenant" text NOT NULL,
	"size" bigint NOT NULL,
	"root" text NOT NULL,
	"note" text NOT NULL,
	"made_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "checkpoints_tenant_size_pk" PRIMARY KEY("tenant","size")
);
--> statement-breakpoint
CREATE TABLE "tree_nodes" (
	"tenant" text NOT NULL,
	"level" integer NOT NULL,
	"no" bigint NOT NULL,
	"hash" "bytea" NOT NULL,
	CONSTRAINT "tree_nodes_tenant_level_no_pk" PRIMARY KEY("tenant","level","no")
);
