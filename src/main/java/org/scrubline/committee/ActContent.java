package org.scrubline.committee;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.DecisionContent.Referred;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.rubric.Family;
import org.scrubline.signoff.SheetContent.Named;
import org.scrubline.signoff.SheetContent.Signer;

/**
 * A signed statement of the committee's work. The hash of its canonical JSON (RFC 8785) stands beside it.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param decision the decision it is about, by its hash; null when it is about none
 * @param family what is suspended or reinstated; null otherwise
 * @param bands of that, as one word such as AB; null otherwise
 * @param ground why it is suspended; null otherwise
 * @param persons who hears an appeal; empty otherwise
 * @param until until when the trainee may appeal, of a letter; null otherwise
 * @param text in the signer's own words, may be empty where no reason is asked for
 * @param credential what the signer was recognised by; null where none is asked for
 */
public record ActContent(
        String schema,
        ActKind kind,
        Named organisation,
        Named programme,
        Named trainee,
        @Nullable Referred decision,
        @Nullable Family family,
        @Nullable String bands,
        @Nullable SuspensionGround ground,
        List<Named> persons,
        @Nullable Instant until,
        String text,
        Signer signer,
        Instant signedAt,
        ZoneId signedZone,
        @Nullable CredentialUsed credential) {

    /** Name and version of this form; a change of its members is another version. */
    public static final String SCHEMA = "scrubline-committee-act/1";

    public ActContent {
        persons = List.copyOf(persons);
    }

    static ActContent read(String json) {
        return CanonicalJson.read(json, ActContent.class);
    }
}
