package org.scrubline.platform.production;

import java.util.List;
import java.util.stream.Stream;
import org.scrubline.platform.UnsafeSettings;
import org.springframework.beans.factory.InitializingBean;
import org.springframework.context.annotation.Profile;
import org.springframework.core.env.Environment;
import org.springframework.stereotype.Component;

/** Refuses to start the production profile where something would put real records at risk (decision 0022). */
@Component
@Profile("production")
class ProductionGuard implements InitializingBean {

    private final Environment settings;
    private final DurabilityQueries database;

    ProductionGuard(Environment settings, DurabilityQueries database) {
        this.settings = settings;
        this.database = database;
    }

    @Override
    public void afterPropertiesSet() {
        List<String> problems = Stream.concat(
                        ProductionSettings.problems(settings).stream(),
                        database.off().stream().map(ProductionGuard::sentence))
                .toList();
        if (!problems.isEmpty()) {
            throw new UnsafeSettings(problems);
        }
    }

    private static String sentence(String name) {
        return "A power cut could lose signed records: switch " + name + " of the database on.";
    }
}
