package org.scrubline.backup;

import java.util.Map;

/** The tables that do not travel, and why. Every other table does; there is no second list. */
final class LeftOut {

    static final Map<String, String> TABLES = Map.of(
            "flyway_schema_history",
                    "the schema's own history; the file names its version and restoring writes it anew",
            "spring_session", "everyone logs in again after a restore",
            "spring_session_attributes", "part of the sessions",
            "login_throttle", "counts guesses of the last minutes",
            "login_link", "codes that live for a quarter of an hour",
            "allowance", "counts what was asked for in the last hour",
            "setup_token", "opens an empty installation only");

    private LeftOut() {}
}
