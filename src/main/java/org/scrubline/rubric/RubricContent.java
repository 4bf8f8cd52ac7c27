package org.scrubline.rubric;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.erdtman.jcs.JsonCanonicalizer;
import tools.jackson.databind.json.JsonMapper;

/**
 * A rubric as canonical JSON (RFC 8785) and its SHA-256: the same content gives the same bytes everywhere.
 *
 * @param json the canonical text
 * @param hash SHA-256 of its UTF-8 bytes, lower-case hexadecimal
 */
record RubricContent(String json, String hash) {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    static RubricContent of(Rubric rubric) {
        try {
            String json = new JsonCanonicalizer(MAPPER.writeValueAsString(rubric)).getEncodedString();
            return new RubricContent(json, sha256(json));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The rubric in this content. Content that does not have this hash was changed past the server: a bug or worse. */
    Rubric rubric() {
        if (!sha256(json).equals(hash)) {
            throw new IllegalStateException("The stored rubric does not have its hash " + hash);
        }
        return MAPPER.readValue(json, Rubric.class);
    }

    private static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }
}
