package org.scrubline.signoff;

import java.util.UUID;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.signoff.StatementContent.Answered;

/**
 * A signed statement about a record, as it is stored.
 *
 * @param json canonical JSON of {@code content}
 * @param hash SHA-256 of {@code json}, lower-case hexadecimal
 */
public record Statement(UUID id, StatementContent content, String json, String hash) {

    static Statement of(StatementContent content) {
        String json = CanonicalJson.of(content);
        return new Statement(UUID.randomUUID(), content, json, CanonicalJson.sha256(json));
    }

    static Statement stored(UUID id, String json, String hash) {
        return new Statement(id, StatementContent.read(json), json, hash);
    }

    Answered reference() {
        return new Answered(id, hash);
    }

    RecordEvent kind() {
        return content.kind();
    }

    boolean by(UUID person) {
        return content.signer().id().equals(person);
    }
}
