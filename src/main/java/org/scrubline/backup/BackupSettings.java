package org.scrubline.backup;

import java.nio.file.Path;
import java.time.LocalTime;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.scrubline.backup.file.Passphrase;
import org.springframework.boot.context.properties.ConfigurationProperties;

/**
 * The nightly backup.
 *
 * @param directory where the files go
 * @param keep how many of them stay, at least 1
 * @param at when, in UTC, as HH:MM
 * @param passphraseFile seals them; null leaves them plain
 */
@ConfigurationProperties("scrubline.backup")
record BackupSettings(
        Path directory, int keep, String at, @Nullable Path passphraseFile) {

    BackupSettings {
        if (keep < 1) {
            throw new IllegalArgumentException("scrubline.backup.keep must be at least 1");
        }
    }

    LocalTime time() {
        return LocalTime.parse(at);
    }

    Optional<Passphrase> passphrase() {
        return Optional.ofNullable(passphraseFile).map(Passphrase::of);
    }
}
