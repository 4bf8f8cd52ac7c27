package org.scrubline.platform.security;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import org.scrubline.platform.UnsafeSettings;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.stereotype.Component;

/**
 * Passwords that have been found out before: a short list of our own, and a file of the operator with one in each line, which
 * may have millions. Eight bytes of a hash are kept of each, in memory alone; a password that meets another's by chance is one
 * in 10^12 with a list of ten millions.
 */
@Component
class RefusedPasswords {

    private static final String OWN = "/passwords/common.txt";

    private final long[] known;

    RefusedPasswords(@Value("${scrubline.passwords.refused:}") String file) {
        this.known = LongStream.concat(own(), file.isBlank() ? LongStream.empty() : given(Path.of(file.strip())))
                .sorted()
                .distinct()
                .toArray();
    }

    boolean contains(String password) {
        return Arrays.binarySearch(known, hash(PasswordPattern.fold(password))) >= 0;
    }

    private static LongStream own() {
        try (InputStream list = Objects.requireNonNull(RefusedPasswords.class.getResourceAsStream(OWN))) {
            return hashes(list);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static LongStream given(Path file) {
        try (InputStream list = Files.newInputStream(file)) {
            return hashes(list);
        } catch (IOException e) {
            throw new UnsafeSettings(
                    List.of("scrubline.passwords.refused names a file that cannot be read: " + file + "."));
        }
    }

    /** Bytes that are no text are read as a sign nobody types, not as an error: such lists are old and mixed. */
    private static LongStream hashes(InputStream list) throws IOException {
        BufferedReader lines = new BufferedReader(new InputStreamReader(list, StandardCharsets.UTF_8));
        LongStream.Builder hashes = LongStream.builder();
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            if (line.length() >= PasswordRule.SHORTEST) {
                hashes.add(hash(PasswordPattern.fold(line)));
            }
        }
        return hashes.build();
    }

    private static long hash(String folded) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            return ByteBuffer.wrap(digest.digest(folded.getBytes(StandardCharsets.UTF_8)))
                    .getLong();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("SHA-256 is part of every JDK", e);
        }
    }
}
