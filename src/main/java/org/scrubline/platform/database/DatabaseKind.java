package org.scrubline.platform.database;

import org.springframework.core.env.Environment;

/** Which of the two kinds of database an installation has. */
public enum DatabaseKind {
    /** The PostgreSQL that comes along, in the data directory. */
    BUNDLED,
    /** A PostgreSQL server the hospital runs. */
    OWN_SERVER;

    /** As the settings say: the bundled one unless {@code spring.datasource.url} names a server. */
    public static DatabaseKind of(Environment settings) {
        return settings.getProperty("spring.datasource.url", "embedded").equals("embedded") ? BUNDLED : OWN_SERVER;
    }
}
