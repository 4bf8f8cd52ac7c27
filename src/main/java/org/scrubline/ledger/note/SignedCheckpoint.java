package org.scrubline.ledger.note;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Base64;
import java.util.Collection;
import java.util.List;
import java.util.Optional;

/**
 * A checkpoint with the signatures under it.
 *
 * @param note the whole text, ending with a newline
 * @param checkpoint what the signed part says
 * @param signatures at least one
 */
public record SignedCheckpoint(String note, Checkpoint checkpoint, List<SignatureLine> signatures) {

    /** What a signature line begins with. */
    static final String DASH = "—";

    private static final int ID = 4;
    private static final int MOST = 100;

    /** A signature with the name of its key; {@code signed} is base64 of key id and signature. */
    public record SignatureLine(String name, String signed) {

        private static SignatureLine parse(String line) {
            String[] parts = line.split(" ", -1);
            if (parts.length != 3 || !parts[0].equals(DASH) || parts[1].isEmpty() || parts[1].contains("+")) {
                throw new IllegalArgumentException("not the line of a signature: " + line);
            }
            if (Base64.getDecoder().decode(parts[2]).length <= ID) {
                throw new IllegalArgumentException("a signature without bytes: " + line);
            }
            return new SignatureLine(parts[1], parts[2]);
        }

        private byte[] bytes() {
            return Base64.getDecoder().decode(signed);
        }

        private boolean names(VerifierKey key) {
            return name.equals(key.name()) && Arrays.equals(Arrays.copyOf(bytes(), ID), key.id());
        }

        private boolean holds(VerifierKey key, byte[] text) {
            byte[] bytes = bytes();
            return key.verifies(text, Arrays.copyOfRange(bytes, ID, bytes.length));
        }
    }

    /** What the signatures are worth to someone who knows some keys. */
    public enum Standing {
        /** At least one known key signed it, and no signature of a known key is broken. */
        SIGNED,
        /** A signature under a known key does not hold. */
        BROKEN,
        /** None of the known keys signed it. */
        UNKNOWN
    }

    /**
     * Reads a signed note that holds a checkpoint.
     *
     * @throws IllegalArgumentException when it is none; the message says why
     */
    public static SignedCheckpoint parse(String note) {
        int blank = note.lastIndexOf("\n\n");
        if (blank < 0 || !note.endsWith("\n") || note.chars().anyMatch(c -> c < ' ' && c != '\n')) {
            throw new IllegalArgumentException(
                    "not a signed note: it has no blank line before the signatures, or" + " holds control characters");
        }
        List<SignatureLine> signatures =
                note.substring(blank + 2).lines().map(SignatureLine::parse).toList();
        if (signatures.isEmpty() || signatures.size() > MOST) {
            throw new IllegalArgumentException("a signed note has between 1 and " + MOST + " signatures");
        }
        return new SignedCheckpoint(note, Checkpoint.parse(note.substring(0, blank + 1)), signatures);
    }

    public Standing standing(Collection<VerifierKey> keys) {
        List<Boolean> known = keys.stream()
                .flatMap(key ->
                        signatures.stream().filter(line -> line.names(key)).map(line -> line.holds(key, signedText())))
                .toList();
        if (known.contains(false)) {
            return Standing.BROKEN;
        }
        return known.isEmpty() ? Standing.UNKNOWN : Standing.SIGNED;
    }

    /** The key among these that signed it. */
    public Optional<VerifierKey> signer(Collection<VerifierKey> keys) {
        return keys.stream()
                .filter(key -> signatures.stream().anyMatch(line -> line.names(key) && line.holds(key, signedText())))
                .findFirst();
    }

    private byte[] signedText() {
        return note.substring(0, note.lastIndexOf("\n\n") + 1).getBytes(StandardCharsets.UTF_8);
    }
}
