package org.scrubline.platform.factor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SecretBoxTests {

    private static final byte[] SECRET = "twenty bytes, as it is".getBytes(StandardCharsets.UTF_8);

    @TempDir
    Path directory;

    @Test
    void whatWasSealedOpensForItsPurposeAlone() throws IOException {
        SecretBox box = box(directory);
        String sealed = box.seal(SECRET, "one");
        assertThat(box.open(sealed, "one")).contains(SECRET);
        assertThat(box.open(sealed, "other")).isEmpty();
    }

    @Test
    void theSameSecretIsNeverSealedTheSameWay() throws IOException {
        SecretBox box = box(directory);
        assertThat(box.seal(SECRET, "one")).isNotEqualTo(box.seal(SECRET, "one"));
    }

    @Test
    void aTouchedOrForeignTextOpensNothing() throws IOException {
        SecretBox box = box(directory);
        String sealed = box.seal(SECRET, "one");
        for (int i = 0; i < sealed.length(); i++) {
            char other = sealed.charAt(i) == 'A' ? 'B' : 'A';
            assertThat(box.open(sealed.substring(0, i) + other + sealed.substring(i + 1), "one"))
                    .isEmpty();
        }
        assertThat(box.open("", "one")).isEmpty();
        assertThat(box.open("no base64!", "one")).isEmpty();
        assertThat(box(directory.resolve("elsewhere")).open(sealed, "one")).isEmpty();
    }

    @Test
    void theKeyIsMadeOnceAndReadableByItsOwnerAlone() throws IOException {
        String sealed = box(directory).seal(SECRET, "one");
        assertThat(box(directory).open(sealed, "one")).contains(SECRET);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(directory.resolve("secrets.key"))))
                .isEqualTo("rw-------");
    }

    @Test
    void itLiesBesideTheKeyOfTheLedgerUnlessItIsNamed() throws IOException {
        Path ledger = directory.resolve("keys").resolve("ledger.key");
        new SecretBox("", ledger.toString(), directory.resolve("data"));
        assertThat(ledger.resolveSibling("secrets.key")).exists();
        Path named = directory.resolve("named.key");
        new SecretBox(named.toString(), ledger.toString(), directory.resolve("data"));
        assertThat(named).exists();
    }

    @Test
    void aFileThatHoldsNoKeyIsSaidToHoldNone() throws IOException {
        Path file = directory.resolve("secrets.key");
        for (String nonsense : new String[] {"", "AAAA", "no base64!"}) {
            Files.writeString(file, nonsense);
            assertThatThrownBy(() -> box(directory)).hasMessageContaining("holds no key of 32 bytes");
        }
    }

    private static SecretBox box(Path directory) throws IOException {
        return new SecretBox("", "", directory);
    }
}
