package org.scrubline.ledger.check;

import java.util.List;
import java.util.UUID;
import org.scrubline.ledger.note.SignedCheckpoint;
import org.scrubline.ledger.note.VerifierKey;

/**
 * What the person who checks knows from outside the evidence.
 *
 * @param keys the newest checkpoint must be signed with one of these; empty when no key is known
 * @param checkpoints kept from earlier; the ledger must continue each
 */
public record Known(List<VerifierKey> keys, List<SignedCheckpoint> checkpoints) {

    public static final Known NOTHING = new Known(List.of(), List.of());

    public Known {
        keys = List.copyOf(keys);
        checkpoints = List.copyOf(checkpoints);
    }

    /**
     * Reads what was kept.
     *
     * @param keys each holds verifier keys, one a line
     * @param checkpoints each a signed note
     * @throws IllegalArgumentException when one is something else; the message says what
     */
    public static Known read(List<String> keys, List<String> checkpoints) {
        return new Known(
                keys.stream()
                        .flatMap(String::lines)
                        .filter(line -> !line.isBlank())
                        .map(VerifierKey::parse)
                        .toList(),
                checkpoints.stream().map(SignedCheckpoint::parse).toList());
    }

    /** The part that is about one organisation. */
    public Known about(UUID tenant) {
        return new Known(
                keys.stream().filter(key -> belongs(key.name(), tenant)).toList(),
                checkpoints.stream()
                        .filter(held -> belongs(held.checkpoint().origin(), tenant))
                        .toList());
    }

    /** Whether an origin, which is also the name of its key, is that of this organisation's ledger. */
    static boolean belongs(String origin, UUID tenant) {
        return origin.endsWith("/ledger/" + tenant);
    }
}
