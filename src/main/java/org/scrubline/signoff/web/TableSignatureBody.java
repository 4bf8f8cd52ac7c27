package org.scrubline.signoff.web;

import java.io.IOException;
import java.io.InputStream;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.scrubline.platform.BodyJson;
import org.scrubline.platform.Credential;
import org.scrubline.signoff.TableSignature;
import tools.jackson.databind.JsonNode;

/**
 * A signature as a device sends it: {@code {"person": id, "at": instant, "zone": zone, "sent": instant, "hash": hexadecimal,
 * "answer": AuthenticationResponseJSON as text}}.
 *
 * @param person who made it, as the device knows
 */
record TableSignatureBody(String person, TableSignature signature) {

    private static final int LARGEST = 16 * 1024;

    /** The signature in a request's body, empty when the body is none. */
    static Optional<TableSignatureBody> read(InputStream body) throws IOException {
        Optional<JsonNode> root = BodyJson.read(body, LARGEST);
        try {
            return root.isPresent() ? of(root.get()) : Optional.empty();
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }

    /** @throws DateTimeException for a time or zone that is none, or one no record can hold */
    private static Optional<TableSignatureBody> of(JsonNode root) {
        String hash = text(root, "hash");
        String answer = text(root, "answer");
        if (!hash.matches("[0-9a-f]{64}") || answer.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new TableSignatureBody(
                text(root, "person"),
                new TableSignature(
                        instant(root, "at"),
                        ZoneId.of(text(root, "zone")),
                        instant(root, "sent"),
                        hash,
                        new Credential.PasskeyAssertion(answer))));
    }

    private static Instant instant(JsonNode root, String name) {
        Instant instant = Instant.parse(text(root, name)).truncatedTo(ChronoUnit.SECONDS);
        if (instant.isBefore(Instant.EPOCH) || instant.isAfter(Instant.parse("9999-01-01T00:00:00Z"))) {
            throw new DateTimeException("out of range");
        }
        return instant;
    }

    private static String text(JsonNode root, String name) {
        return root.path(name).isString() ? root.path(name).stringValue() : "";
    }
}
