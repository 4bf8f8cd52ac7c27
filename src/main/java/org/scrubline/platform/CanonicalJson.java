package org.scrubline.platform;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.text.Normalizer;
import java.util.HexFormat;
import org.erdtman.jcs.JsonCanonicalizer;
import tools.jackson.databind.json.JsonMapper;

/** Records as canonical JSON (RFC 8785) with all text in Unicode normal form C, and the hash of it. */
public final class CanonicalJson {

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private CanonicalJson() {}

    /** RFC 8785 does not normalise text, so that is done first; none of JSON's own characters composes with another. */
    public static String of(Object value) {
        return canonical(Normalizer.normalize(MAPPER.writeValueAsString(value), Normalizer.Form.NFC));
    }

    /**
     * One JSON text in canonical form.
     *
     * @throws UncheckedIOException when it is no JSON
     */
    public static String canonical(String json) {
        try {
            return new JsonCanonicalizer(json).getEncodedString();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public static <T> T read(String json, Class<T> type) {
        return MAPPER.readValue(json, type);
    }

    /** SHA-256 of the UTF-8 bytes, lower-case hexadecimal. */
    public static String sha256(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return HexFormat.of().formatHex(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The 32 bytes of a hash that {@link #sha256} wrote, which a passkey signs; none for text that is no such hash. */
    public static byte[] hashBytes(String hash) {
        return hash.matches("[0-9a-f]{64}") ? HexFormat.of().parseHex(hash) : new byte[0];
    }
}
