-- Background jobs: what runs next, what runs now, and how the last run ended. The table is the one the job library
-- publishes for PostgreSQL; it belongs to the installation, because a job starts before any organisation is entered.

CREATE TABLE scheduled_tasks (
    task_name            text NOT NULL,
    task_instance        text NOT NULL,
    -- Never filled: a job carries a key in task_instance and reads the rest from the data.
    task_data            bytea CHECK (task_data IS NULL),
    execution_time       timestamptz,
    picked               boolean NOT NULL,
    picked_by            text,
    last_success         timestamptz,
    last_failure         timestamptz,
    consecutive_failures integer,
    last_heartbeat       timestamptz,
    version              bigint NOT NULL,
    priority             smallint,
    state                text,
    PRIMARY KEY (task_name, task_instance)
);
CREATE INDEX scheduled_tasks_due ON scheduled_tasks (execution_time);
CREATE INDEX scheduled_tasks_heartbeat ON scheduled_tasks (last_heartbeat);
GRANT SELECT, INSERT, UPDATE, DELETE ON scheduled_tasks TO ${runtimeRole};
