package org.scrubline.platform.production;

import java.util.List;
import org.scrubline.platform.UnsafeSettings;
import org.springframework.context.ApplicationContextInitializer;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.core.env.ConfigurableEnvironment;
import org.springframework.core.env.Profiles;

/**
 * Refuses to start the production profile with settings that would put real records at risk (decision 0022): before anything
 * is opened, so that a refused start has touched no database.
 */
class SettingsGuard implements ApplicationContextInitializer<ConfigurableApplicationContext> {

    @Override
    public void initialize(ConfigurableApplicationContext context) {
        ConfigurableEnvironment settings = context.getEnvironment();
        if (!settings.acceptsProfiles(Profiles.of("production"))) {
            return;
        }
        List<String> problems = ProductionSettings.problems(settings);
        if (!problems.isEmpty()) {
            throw new UnsafeSettings(problems);
        }
    }
}
