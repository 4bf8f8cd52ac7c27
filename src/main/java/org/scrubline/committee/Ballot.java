package org.scrubline.committee;

import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Who of a meeting may vote on one trainee. */
public record Ballot(int quorum, List<Voter> voters) {

    /** Why somebody neither votes nor counts to the quorum. */
    public enum Bar {
        /** A trainee does not decide about themselves. */
        SELF,
        /** Declared for this meeting. */
        DECLARED,
        /** Declared in the organisation, by either. */
        CONFLICT,
        /** Reviewed a contest of one of the trainee's records. */
        REVIEWED,
        /** Scored the trainee, where the programme does not let scorers vote. */
        SCORED
    }

    /**
     * Somebody invited.
     *
     * @param bar null when nothing stands against voting
     * @param scored records about the trainee that this person signed and that count
     */
    public record Voter(
            UUID id, String name, boolean present, @Nullable Bar bar, int scored) {

        public boolean votes() {
            return present && bar == null;
        }
    }

    public Ballot {
        voters = List.copyOf(voters);
    }

    /** Those present whom nothing bars. */
    public List<Voter> voting() {
        return voters.stream().filter(Voter::votes).toList();
    }

    public boolean quorate() {
        return voting().size() >= quorum;
    }

    public Optional<Voter> voter(UUID person) {
        return voters.stream().filter(voter -> voter.id().equals(person)).findFirst();
    }
}
