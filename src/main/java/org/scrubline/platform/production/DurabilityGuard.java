package org.scrubline.platform.production;

import java.util.List;
import org.scrubline.platform.UnsafeSettings;
import org.springframework.beans.factory.InitializingBean;
import org.springframework.context.annotation.Profile;
import org.springframework.stereotype.Component;

/** Refuses to start the production profile on a database that could lose what it said was stored (decision 0022). */
@Component
@Profile("production")
class DurabilityGuard implements InitializingBean {

    private final DurabilityQueries database;

    DurabilityGuard(DurabilityQueries database) {
        this.database = database;
    }

    @Override
    public void afterPropertiesSet() {
        List<String> problems =
                database.off().stream().map(DurabilityGuard::sentence).toList();
        if (!problems.isEmpty()) {
            throw new UnsafeSettings(problems);
        }
    }

    private static String sentence(String name) {
        return "A power cut could lose signed records: switch " + name + " of the database on.";
    }
}
