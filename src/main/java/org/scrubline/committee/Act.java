package org.scrubline.committee;

import java.util.UUID;
import org.scrubline.platform.CanonicalJson;

/**
 * A stored statement.
 *
 * @param json canonical JSON of {@code content}
 * @param hash SHA-256 of {@code json}, lower-case hexadecimal
 */
public record Act(UUID id, ActContent content, String json, String hash) {

    static Act of(ActContent content) {
        String json = CanonicalJson.of(content);
        return new Act(UUID.randomUUID(), content, json, CanonicalJson.sha256(json));
    }

    public ActKind kind() {
        return content.kind();
    }
}
