package org.scrubline.command;

import java.util.List;
import org.springframework.boot.context.config.ConfigDataEnvironmentPostProcessor;
import org.springframework.boot.context.properties.source.ConfigurationPropertySources;
import org.springframework.boot.logging.LoggingSystem;
import org.springframework.core.env.Environment;
import org.springframework.core.env.SimpleCommandLinePropertySource;
import org.springframework.core.env.StandardEnvironment;

/** The settings the server would start with: the line, the environment, the files of settings. */
final class InstallationSettings {

    private InstallationSettings() {}

    /**
     * Reads them without starting anything. What a command has to say it says itself, so nothing is logged.
     *
     * @param options as {@code --name=value}
     */
    static Environment of(List<String> options) {
        LoggingSystem.get(InstallationSettings.class.getClassLoader()).beforeInitialize();
        StandardEnvironment settings = new StandardEnvironment();
        settings.getPropertySources().addFirst(new SimpleCommandLinePropertySource(options.toArray(String[]::new)));
        ConfigDataEnvironmentPostProcessor.applyTo(settings);
        ConfigurationPropertySources.attach(settings);
        return settings;
    }
}
