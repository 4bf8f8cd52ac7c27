package org.scrubline.backup;

import org.scrubline.platform.database.DatabaseKind;

/** The state of the server and its database, for administrators and for monitoring. */
public interface Installation {

    /**
     * The database.
     *
     * @param kind bundled or a server of one's own
     * @param version as the database states it
     * @param schema version of the tables
     */
    record Database(DatabaseKind kind, String version, String schema) {}

    Database database();

    BackupAge newestBackup();
}
