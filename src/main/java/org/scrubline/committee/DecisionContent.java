package org.scrubline.committee;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.scrubline.committee.pack.PackContent.Answer;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.rubric.Family;
import org.scrubline.signoff.SheetContent.Named;
import org.scrubline.signoff.SheetContent.Signer;

/**
 * Everything a decision says. Its canonical JSON (RFC 8785) is what the chair reads, and its hash what a passkey signs.
 *
 * @param schema {@link #SCHEMA}, the name and version of this form
 * @param pack the frozen evidence it rests on, by its hash
 * @param bands complexity bands as one word, such as AB
 * @param level null when the answer is "insufficient evidence" and nothing changes
 * @param evidence what the evidence said on each level it was asked about
 * @param departs whether the decision departs from that
 * @param departing why it does; empty otherwise
 * @param dissent may be empty
 * @param quorum members asked for
 * @param replaces the decision before in the same family and some of these bands, by its hash; null when there is none
 */
public record DecisionContent(
        String schema,
        Named organisation,
        Named programme,
        UUID meeting,
        Instant meetingAt,
        Referred pack,
        Named trainee,
        Family family,
        String bands,
        @Nullable EntitlementLevel level,
        LocalDate reviewOn,
        List<Said> evidence,
        boolean departs,
        String reasons,
        String departing,
        String dissent,
        List<Ballotting> members,
        int quorum,
        @Nullable Referred replaces,
        Signer signer) {

    /** Name and version of this form; a change of its members is another version. */
    public static final String SCHEMA = "scrubline-decision/1";

    /** A record by its hash. */
    public record Referred(UUID id, String contentHash) {}

    /** What the evidence said on a level. */
    public record Said(String level, Answer answer) {}

    /**
     * A member of the committee at this decision.
     *
     * @param bar why this member neither votes nor counts to the quorum; null when nothing does
     * @param declared the reason as declared for the meeting; null when nothing was
     * @param scored records about the trainee this member signed
     * @param vote null for who does not vote
     */
    public record Ballotting(
            Named person,
            boolean present,
            Ballot.@Nullable Bar bar,
            @Nullable String declared,
            int scored,
            @Nullable Vote vote) {}

    public DecisionContent {
        evidence = List.copyOf(evidence);
        members = List.copyOf(members);
    }

    public static DecisionContent read(String json) {
        return CanonicalJson.read(json, DecisionContent.class);
    }

    public int votes(Vote vote) {
        return (int) members.stream().filter(member -> member.vote() == vote).count();
    }
}
