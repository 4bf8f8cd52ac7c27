package org.scrubline.signoff;

import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.platform.CanonicalJson;

/**
 * What somebody is about to sign about a record, before the server adds who, when and where. Its hash is what a passkey
 * signs; anyone can form it again from what was stored, which is how the signature is verified later.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param record the signed version, or the sheet a late release is for
 * @param contentHash hash of that version's content; empty for a late release, whose sheet is not signed yet
 * @param answers hash of the statement it answers; null when it answers none
 * @param person who is named; null when nobody is
 * @param ground of a void request; null otherwise
 * @param steps a contest is about
 * @param words tidied text, may be empty
 */
public record Intent(
        String schema,
        RecordEvent act,
        UUID record,
        String contentHash,
        @Nullable String answers,
        @Nullable UUID person,
        @Nullable VoidGround ground,
        List<String> steps,
        String words) {

    /** Name and version of this form; a change of its members is another version. */
    public static final String SCHEMA = "scrubline-intent/1";

    public Intent {
        steps = List.copyOf(steps);
    }

    /** Words about a record and nothing else. */
    static Intent of(RecordEvent act, UUID record, String contentHash, String words) {
        return new Intent(SCHEMA, act, record, contentHash, null, null, null, List.of(), words);
    }

    static Intent of(VersionSignatureContent content) {
        return of(content.event(), content.record().id(), content.record().contentHash(), content.words());
    }

    static Intent of(StatementContent content) {
        StatementContent.Answered answers = content.answers();
        SheetContent.Named person = content.person();
        return new Intent(
                SCHEMA,
                content.kind(),
                content.record().id(),
                content.record().contentHash(),
                answers == null ? null : answers.contentHash(),
                person == null ? null : person.id(),
                content.ground(),
                content.steps(),
                content.text());
    }

    /** SHA-256 of its canonical JSON, lower-case hexadecimal. */
    public String hash() {
        return CanonicalJson.sha256(CanonicalJson.of(this));
    }
}
