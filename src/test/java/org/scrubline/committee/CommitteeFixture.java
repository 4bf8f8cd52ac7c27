package org.scrubline.committee;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Family;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.RubricLibrary;
import org.scrubline.rubric.Rubrics;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.Versions.Signature;
import org.scrubline.support.History;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.stereotype.Component;

/** A programme with a committee, a trainee with some history, and an open meeting about that trainee. */
@Component
public class CommitteeFixture {

    public static final String REASONS = "The steps were seen often and went well.";

    private final Meetings meetings;
    private final Packs packs;
    private final Decisions decisions;
    private final Rubrics rubrics;
    private final RubricLibrary library;
    private final ScrublineClock clock;

    CommitteeFixture(
            Meetings meetings,
            Packs packs,
            Decisions decisions,
            Rubrics rubrics,
            RubricLibrary library,
            ScrublineClock clock) {
        this.library = library;
        this.meetings = meetings;
        this.packs = packs;
        this.decisions = decisions;
        this.rubrics = rubrics;
        this.clock = clock;
    }

    /** Who is there. */
    public record Board(
            TestOrganisation organisation,
            SignedIn director,
            SignedIn chair,
            List<SignedIn> members,
            SignedIn administrator,
            SignedIn trainee,
            List<SignedIn> supervisors,
            List<SignedSheet> records) {

        public <T> T in(Supplier<T> work) {
            return organisation.in(work);
        }

        public List<UUID> invited() {
            List<UUID> all =
                    new ArrayList<>(members.stream().map(SignedIn::personId).toList());
            all.add(director.personId());
            return all;
        }
    }

    /** The chair is the first of three members; the trainee has this many signed cases of four supervisors. */
    public Board board(TestOrganisations organisations, History history, int cases) {
        TestOrganisation organisation = organisations.open();
        SignedIn director = organisation.join("Corisande Delmarr", Role.DIRECTOR);
        List<SignedIn> members = List.of("Thaddeus Quillmere", "Asta Brevonne", "Ilse Marrowby").stream()
                .map(name -> organisation.join(name, Role.COMMITTEE_MEMBER))
                .toList();
        SignedIn administrator = organisation.join("Pell Ormandine", Role.ADMINISTRATOR);
        SignedIn trainee = organisation.join("Fenna Hallinor", Role.TRAINEE);
        List<SignedIn> supervisors =
                List.of("Ottilie Brannock", "Ludo Karsenmark", "Ruy Estavane", "Anneke Tolvarin").stream()
                        .map(name -> organisation.join(name, Role.SUPERVISOR))
                        .toList();
        organisation.in(() -> rubrics.publish(library.rubric(Procedures.TRAB_FORNIX), director.personId())
                .orThrow());
        List<SignedSheet> records = new ArrayList<>();
        Instant start = clock.instant().minus(Duration.ofDays(200));
        for (int i = 0; i < cases; i++) {
            records.add(history.signed(
                    organisation, trainee, supervisors.get(i % 4), start.plus(Duration.ofDays(9L * i)), Map.of()));
        }
        return new Board(organisation, director, members.get(0), members, administrator, trainee, supervisors, records);
    }

    public Meeting planned(Board board) {
        MeetingPlan plan = new MeetingPlan(
                clock.instant(),
                board.invited(),
                board.chair().personId(),
                List.of(board.trainee().personId()));
        return board.in(() -> meetings.plan(
                        board.director(), board.organisation().programme().id(), plan)
                .orThrow());
    }

    public Packs.Frozen freeze(Board board, Meeting meeting) {
        return board.in(() -> packs.freeze(
                        board.administrator(), meeting.id(), board.trainee().personId())
                .orThrow());
    }

    /** Open, frozen, with everybody there. */
    public Meeting open(Board board) {
        Meeting meeting = planned(board);
        freeze(board, meeting);
        board.in(() ->
                meetings.move(board.chair(), meeting.id(), MeetingState.OPEN).orThrow());
        return present(board, meeting, Set.copyOf(board.invited()));
    }

    public Meeting present(Board board, Meeting meeting, Set<UUID> present) {
        return board.in(
                () -> meetings.presence(board.chair(), meeting.id(), present).orThrow());
    }

    /** Trabeculectomy in bands A and B, everyone who may vote for it. */
    public DecisionDraft draft(Board board, Meeting meeting, @Nullable EntitlementLevel level) {
        Map<UUID, Vote> votes = new HashMap<>();
        board.in(() -> decisions.ballot(
                        board.chair(), meeting.id(), board.trainee().personId()))
                .voting()
                .forEach(voter -> votes.put(voter.id(), Vote.FOR));
        return new DecisionDraft(
                Family.TRABECULECTOMY,
                Set.of(Band.A, Band.B),
                true,
                level,
                LocalDate.ofInstant(clock.instant(), ZoneId.of("Europe/London")).plusMonths(6),
                REASONS,
                "The committee also heard the supervisors.",
                "",
                votes);
    }

    public Attempt<Decision> sign(Board board, Meeting meeting, DecisionDraft draft) {
        UUID trainee = board.trainee().personId();
        return board.in(() -> {
            decisions.write(board.chair(), meeting.id(), trainee, draft).orThrow();
            String hash =
                    decisions.preview(board.chair(), meeting.id(), trainee).hash();
            return decisions.sign(
                    board.chair(), meeting.id(), trainee, hash, new Credential.Password(TestOrganisations.PASSWORD));
        });
    }

    public Decision decided(Board board, Meeting meeting, @Nullable EntitlementLevel level) {
        return sign(board, meeting, draft(board, meeting, level)).orThrow();
    }

    public static Signature signature(String text) {
        return Signature.byPassword(text, TestOrganisations.PASSWORD);
    }
}
