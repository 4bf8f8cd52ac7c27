package org.scrubline.ledger;

import java.io.IOException;
import java.nio.file.Path;
import java.util.UUID;
import org.scrubline.ledger.note.KeyFile;
import org.scrubline.ledger.note.SigningKey;
import org.scrubline.platform.TenantScope;
import org.scrubline.platform.database.DatabaseUnusable;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/** Under which name and with which key this installation signs. The key lies in a file, never in the database. */
@Component
class LedgerIdentity {

    private static final String EMBEDDED = "embedded";

    private final String installation;
    private final SigningKey key;

    LedgerIdentity(
            @Value("${scrubline.ledger.origin}") String installation,
            @Value("${scrubline.ledger.key-file}") String keyFile,
            @Value("${scrubline.data-directory}") Path dataDirectory,
            @Value("${spring.datasource.url:" + EMBEDDED + "}") String database)
            throws IOException {
        if (!installation.matches("[^\\s+\\p{Cntrl}]+")) {
            throw new DatabaseUnusable("scrubline.ledger.origin is the name of this installation on its checkpoints; it"
                    + " has no spaces and no plus sign, such as records.hospital.example.");
        }
        this.installation = installation;
        this.key = KeyFile.readOrCreate(file(keyFile, dataDirectory, database));
    }

    private static Path file(String keyFile, Path dataDirectory, String database) {
        if (!keyFile.isEmpty()) {
            return Path.of(keyFile);
        }
        if (!database.equals(EMBEDDED)) {
            throw new DatabaseUnusable("Set scrubline.ledger.key-file: the file that holds the key for signing"
                    + " checkpoints, on this machine and not in the database. It is made at the first start.");
        }
        return dataDirectory.resolve("ledger.key");
    }

    /** First line of a checkpoint, and name of the key under it. */
    String origin() {
        return installation + "/ledger/" + tenant();
    }

    private static UUID tenant() {
        return TenantScope.require();
    }

    SigningKey key() {
        return key;
    }

    String verifierKey() {
        return key.verifier(origin()).text();
    }
}
