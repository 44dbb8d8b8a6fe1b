CREATE TABLE "account_persons" (
	"user_id" text NOT NULL,
	"tenant" text NOT NULL,
	"person_id" text NOT NULL,
	CONSTRAINT "account_persons_user_id_tenant_pk" PRIMARY KEY("user_id","tenant")
);
--> statement-breakpoint
CREATE TABLE "drafts" (
	"tenant" text NOT NULL,
	"user_id" text NOT NULL,
	"key" text NOT NULL,
	"json" jsonb NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "drafts_tenant_user_id_key_pk" PRIMARY KEY("tenant","user_id","key")
);
--> statement-breakpoint
CREATE TABLE "fact_cites" (
	"tenant" text NOT NULL,
	"fact_id" uuid NOT NULL,
	"from_stream" text NOT NULL,
	"to_stream" text NOT NULL,
	CONSTRAINT "fact_cites_tenant_fact_id_to_stream_pk" PRIMARY KEY("tenant","fact_id","to_stream")
);
--> statement-breakpoint
CREATE TABLE "facts" (
	"tenant" text NOT NULL,
	"stream" text NOT NULL,
	"position" integer NOT NULL,
	"id" uuid NOT NULL,
	"leaf" bigint NOT NULL,
	"kind" text NOT NULL,
	"observed_at" timestamp with time zone NOT NULL,
	"sha256" text NOT NULL,
	"bytes" "bytea" NOT NULL,
	"received_at" text NOT NULL,
	"received_by" text NOT NULL,
	CONSTRAINT "facts_tenant_stream_position_pk" PRIMARY KEY("tenant","stream","position")
);
--> statement-breakpoint
CREATE TABLE "issues" (
	"tenant" text NOT NULL,
	"fact" uuid NOT NULL,
	"repair" text NOT NULL,
	"revision" integer NOT NULL,
	"sha256" text NOT NULL,
	"size_bytes" bigint NOT NULL,
	"issued_at" text NOT NULL,
	CONSTRAINT "issues_tenant_fact_pk" PRIMARY KEY("tenant","fact")
);
--> statement-breakpoint
CREATE TABLE "job_progress" (
	"tenant" text NOT NULL,
	"key" text NOT NULL,
	"task" text NOT NULL,
	"state" text NOT NULL,
	"done_count" integer DEFAULT 0 NOT NULL,
	"total_count" integer,
	"note" text,
	"result" jsonb,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "job_progress_tenant_key_pk" PRIMARY KEY("tenant","key")
);
--> statement-breakpoint
CREATE TABLE "photos" (
	"tenant" text NOT NULL,
	"fact" uuid NOT NULL,
	"repair" text NOT NULL,
	"point" text NOT NULL,
	"attempt" integer NOT NULL,
	"sha256" text NOT NULL,
	"d_hash" text NOT NULL,
	"p_hash" text NOT NULL,
	"d_hash_bits" bigint NOT NULL,
	"rendition_sha256" text NOT NULL,
	"thumb_sha256" text NOT NULL,
	CONSTRAINT "photos_tenant_fact_pk" PRIMARY KEY("tenant","fact")
);
--> statement-breakpoint
CREATE TABLE "projection_debts" (
	"tenant" text NOT NULL,
	"repair" text NOT NULL,
	"leaf" bigint NOT NULL,
	CONSTRAINT "projection_debts_tenant_repair_pk" PRIMARY KEY("tenant","repair")
);
--> statement-breakpoint
CREATE TABLE "repairs" (
	"tenant" text NOT NULL,
	"stream" text NOT NULL,
	"number" text NOT NULL,
	"line" text NOT NULL,
	"status" text NOT NULL,
	"row" jsonb NOT NULL,
	"folded_at" timestamp with time zone NOT NULL,
	"changes_at" timestamp with time zone,
	CONSTRAINT "repairs_tenant_stream_pk" PRIMARY KEY("tenant","stream")
);
--> statement-breakpoint
CREATE TABLE "setup_codes" (
	"code_sha256" text PRIMARY KEY NOT NULL,
	"made_at" timestamp with time zone DEFAULT now() NOT NULL,
	"used_at" timestamp with time zone
);
--> statement-breakpoint
CREATE TABLE "store_marks" (
	"key" text PRIMARY KEY NOT NULL,
	"value" jsonb NOT NULL
);
--> statement-breakpoint
CREATE TABLE "tenants" (
	"id" text PRIMARY KEY NOT NULL,
	"slug" text NOT NULL,
	"name" text NOT NULL,
	"is_demo" boolean DEFAULT false NOT NULL,
	"leaf_count" bigint DEFAULT 0 NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "tenants_slug_unique" UNIQUE("slug")
);
--> statement-breakpoint
CREATE TABLE "uses" (
	"tenant" text NOT NULL,
	"repair" text NOT NULL,
	"no" integer NOT NULL,
	"point" text NOT NULL,
	"attempt" integer NOT NULL,
	"fact" uuid NOT NULL,
	"at" text NOT NULL,
	"at_instant" timestamp with time zone NOT NULL,
	"of_stream" text NOT NULL,
	"role" text NOT NULL,
	"into" text,
	"amount" jsonb,
	CONSTRAINT "uses_tenant_repair_no_pk" PRIMARY KEY("tenant","repair","no")
);
--> statement-breakpoint
CREATE TABLE "account" (
	"id" text PRIMARY KEY NOT NULL,
	"account_id" text NOT NULL,
	"provider_id" text NOT NULL,
	"user_id" text NOT NULL,
	"access_token" text,
	"refresh_token" text,
	"id_token" text,
	"access_token_expires_at" timestamp with time zone,
	"refresh_token_expires_at" timestamp with time zone,
	"scope" text,
	"password" text,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
CREATE TABLE "invitation" (
	"id" text PRIMARY KEY NOT NULL,
	"organization_id" text NOT NULL,
	"email" text NOT NULL,
	"role" text,
	"status" text DEFAULT 'pending' NOT NULL,
	"expires_at" timestamp with time zone NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"inviter_id" text NOT NULL
);
--> statement-breakpoint
CREATE TABLE "member" (
	"id" text PRIMARY KEY NOT NULL,
	"organization_id" text NOT NULL,
	"user_id" text NOT NULL,
	"role" text DEFAULT 'member' NOT NULL,
	"created_at" timestamp with time zone NOT NULL
);
--> statement-breakpoint
CREATE TABLE "organization" (
	"id" text PRIMARY KEY NOT NULL,
	"name" text NOT NULL,
	"slug" text NOT NULL,
	"logo" text,
	"created_at" timestamp with time zone NOT NULL,
	"metadata" text,
	CONSTRAINT "organization_slug_unique" UNIQUE("slug")
);
--> statement-breakpoint
CREATE TABLE "session" (
	"id" text PRIMARY KEY NOT NULL,
	"expires_at" timestamp with time zone NOT NULL,
	"token" text NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	"ip_address" text,
	"user_agent" text,
	"user_id" text NOT NULL,
	"active_organization_id" text,
	CONSTRAINT "session_token_unique" UNIQUE("token")
);
--> statement-breakpoint
CREATE TABLE "user" (
	"id" text PRIMARY KEY NOT NULL,
	"name" text NOT NULL,
	"email" text NOT NULL,
	"email_verified" boolean DEFAULT false NOT NULL,
	"image" text,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "user_email_unique" UNIQUE("email")
);
--> statement-breakpoint
CREATE TABLE "verification" (
	"id" text PRIMARY KEY NOT NULL,
	"identifier" text NOT NULL,
	"value" text NOT NULL,
	"expires_at" timestamp with time zone NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"updated_at" timestamp with time zone DEFAULT now() NOT NULL
);
--> statement-breakpoint
ALTER TABLE "facts" ADD CONSTRAINT "facts_tenant_tenants_id_fk" FOREIGN KEY ("tenant") REFERENCES "public"."tenants"("id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "account" ADD CONSTRAINT "account_user_id_user_id_fk" FOREIGN KEY ("user_id") REFERENCES "public"."user"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_organization_id_organization_id_fk" FOREIGN KEY ("organization_id") REFERENCES "public"."organization"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "invitation" ADD CONSTRAINT "invitation_inviter_id_user_id_fk" FOREIGN KEY ("inviter_id") REFERENCES "public"."user"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "member" ADD CONSTRAINT "member_organization_id_organization_id_fk" FOREIGN KEY ("organization_id") REFERENCES "public"."organization"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "member" ADD CONSTRAINT "member_user_id_user_id_fk" FOREIGN KEY ("user_id") REFERENCES "public"."user"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "session" ADD CONSTRAINT "session_user_id_user_id_fk" FOREIGN KEY ("user_id") REFERENCES "public"."user"("id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE UNIQUE INDEX "account_persons_person" ON "account_persons" USING btree ("tenant","person_id");--> statement-breakpoint
CREATE INDEX "fact_cites_from" ON "fact_cites" USING btree ("tenant","from_stream");--> statement-breakpoint
CREATE INDEX "fact_cites_to" ON "fact_cites" USING btree ("tenant","to_stream");--> statement-breakpoint
CREATE UNIQUE INDEX "facts_tenant_id" ON "facts" USING btree ("tenant","id");--> statement-breakpoint
CREATE UNIQUE INDEX "facts_tenant_leaf" ON "facts" USING btree ("tenant","leaf");--> statement-breakpoint
CREATE INDEX "facts_tenant_kind" ON "facts" USING btree ("tenant","kind","observed_at");--> statement-breakpoint
CREATE INDEX "issues_repair" ON "issues" USING btree ("tenant","repair");--> statement-breakpoint
CREATE INDEX "photos_sha256" ON "photos" USING btree ("tenant","sha256");--> statement-breakpoint
CREATE INDEX "photos_rendition" ON "photos" USING btree ("tenant","rendition_sha256");--> statement-breakpoint
CREATE INDEX "photos_thumb" ON "photos" USING btree ("tenant","thumb_sha256");--> statement-breakpoint
CREATE INDEX "photos_repair" ON "photos" USING btree ("tenant","repair");--> statement-breakpoint
CREATE INDEX "uses_of_stream" ON "uses" USING btree ("tenant","of_stream","at_instant");--> statement-breakpoint
CREATE INDEX "account_user_id" ON "account" USING btree ("user_id");--> statement-breakpoint
CREATE INDEX "invitation_organization_id" ON "invitation" USING btree ("organization_id");--> statement-breakpoint
CREATE INDEX "invitation_email" ON "invitation" USING btree ("email");--> statement-breakpoint
CREATE INDEX "member_organization_id" ON "member" USING btree ("organization_id");--> statement-breakpoint
CREATE INDEX "member_user_id" ON "member" USING btree ("user_id");--> statement-breakpoint
CREATE INDEX "session_user_id" ON "session" USING btree ("user_id");--> statement-breakpoint
CREATE INDEX "verification_identifier" ON "verification" USING btree ("identifier");