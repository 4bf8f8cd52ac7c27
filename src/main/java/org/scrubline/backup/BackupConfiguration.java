package org.scrubline.backup;

import java.time.Clock;
import org.springframework.boot.context.properties.EnableConfigurationProperties;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;

@Configuration(proxyBeanMethods = false)
@EnableConfigurationProperties(BackupSettings.class)
class BackupConfiguration {

    @Bean
    @Conditional(NightlyBackupWanted.class)
    NightlyBackup nightlyBackup(BackupSettings settings, JdbcConnectionDetails connection, Clock clock) {
        return new NightlyBackup(settings, connection, clock);
    }
}
