package org.scrubline.committee;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.committee.CommitteeFixture.Board;
import org.scrubline.entitlement.Entitlement;
import org.scrubline.entitlement.EntitlementLevel;
import org.scrubline.entitlement.Entitlements;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.People;
import org.scrubline.people.SettingKey;
import org.scrubline.people.Settings;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.rubric.Family;
import org.scrubline.signoff.Contests;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.History;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

@ScrublineTest
class DecisionTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    History history;

    @Autowired
    CommitteeFixture fixture;

    @Autowired
    Meetings meetings;

    @Autowired
    Decisions decisions;

    @Autowired
    Acts acts;

    @Autowired
    Suspensions suspensions;

    @Autowired
    Duties duties;

    @Autowired
    Entitlements entitlements;

    @Autowired
    People people;

    @Autowired
    Settings settings;

    @Autowired
    Contests contests;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    Board board;
    Meeting meeting;
    UUID trainee;
    UUID programme;

    @BeforeEach
    void openAMeeting() {
        board = fixture.board(organisations, history, 1);
        meeting = fixture.open(board);
        trainee = board.trainee().personId();
        programme = board.organisation().programme().id();
    }

    private static List<String> keys(Attempt<?> attempt) {
        return attempt.fold(
                done -> List.of(),
                reasons -> reasons.stream().map(Refusal::messageKey).toList());
    }

    private DecisionDraft draft() {
        return fixture.draft(board, meeting, EntitlementLevel.E1);
    }

    @Test
    void aSignedDecisionSetsWhatTheTraineeMayDo() {
        Decision decision = fixture.decided(board, meeting, EntitlementLevel.E1);
        List<Entitlement> held = board.in(() -> entitlements.of(programme, trainee));
        assertThat(held).singleElement().satisfies(one -> {
            assertThat(one.level()).isEqualTo(EntitlementLevel.E1);
            assertThat(one.source()).isEqualTo(decision.id());
        });
        assertThat(decision.signed().credential()).isEqualTo(new CredentialUsed(CredentialUsed.Kind.PASSWORD, null));
        assertThat(decision.content().signer().meaning()).startsWith("I decide");
        assertThat(decision.content().votes(Vote.FOR)).isEqualTo(4);
        assertThat(board.in(() -> ledger.find(LeafKind.DECISION, decision.id())))
                .isPresent();
        assertThat(board.in(() -> decisions.read(board.trainee(), decision.id()))
                        .decision())
                .isEqualTo(decision);
    }

    @Test
    void insufficientEvidenceIsAnAnswerThatChangesNothing() {
        Decision decision = fixture.decided(board, meeting, null);
        assertThat(decision.content().departs()).isFalse();
        assertThat(board.in(() -> entitlements.of(programme, trainee))).isEmpty();
    }

    @Test
    void aLevelTheEvidenceDoesNotSupportNeedsItsOwnReason() {
        DecisionDraft draft = fixture.draft(board, meeting, EntitlementLevel.E2);
        DecisionDraft silent = new DecisionDraft(
                draft.family(),
                draft.bands(),
                true,
                draft.level(),
                draft.reviewOn(),
                draft.reasons(),
                "",
                "",
                draft.votes());
        assertThat(keys(fixture.sign(board, meeting, silent))).containsExactly("committee.refusal.departing");
        Decision decision = fixture.sign(board, meeting, draft).orThrow();
        assertThat(decision.content().departs()).isTrue();
        assertThat(decision.content().departing()).isNotEmpty();
    }

    @Test
    void withoutAQuorumNothingIsDecided() {
        fixture.present(
                board,
                meeting,
                Set.of(board.chair().personId(), board.members().get(1).personId()));
        assertThat(keys(fixture.sign(board, meeting, draft()))).containsExactly("committee.refusal.quorum");
        fixture.present(
                board,
                meeting,
                Set.of(
                        board.chair().personId(),
                        board.members().get(1).personId(),
                        board.members().get(2).personId()));
        assertThat(keys(fixture.sign(board, meeting, draft()))).isEmpty();
    }

    @Test
    void whoDeclaredAConflictNeitherVotesNorCounts() {
        SignedIn brevonne = board.members().get(1);
        board.in(() -> meetings.declareConflict(brevonne, meeting.id(), brevonne.personId(), trainee, "relative")
                .orThrow());
        Ballot ballot = board.in(() -> decisions.ballot(board.chair(), meeting.id(), trainee));
        assertThat(ballot.voter(brevonne.personId()).orElseThrow().bar()).isEqualTo(Ballot.Bar.DECLARED);
        assertThat(ballot.voting()).hasSize(3);
        Map<UUID, Vote> votes = new HashMap<>(draft().votes());
        votes.put(brevonne.personId(), Vote.FOR);
        assertThat(keys(fixture.sign(board, meeting, with(draft(), votes)))).containsExactly("committee.refusal.votes");
        Decision decision = fixture.sign(board, meeting, draft()).orThrow();
        assertThat(decision.content().members())
                .filteredOn(member -> member.bar() == Ballot.Bar.DECLARED)
                .singleElement()
                .satisfies(member -> assertThat(member.declared()).isEqualTo("relative"))
                .satisfies(member -> assertThat(member.vote()).isNull());
    }

    private static DecisionDraft with(DecisionDraft draft, Map<UUID, Vote> votes) {
        return new DecisionDraft(
                draft.family(),
                draft.bands(),
                draft.answered(),
                draft.level(),
                draft.reviewOn(),
                draft.reasons(),
                draft.departing(),
                draft.dissent(),
                votes);
    }

    @Test
    void aConflictInTheOrganisationBarsAsWell() {
        board.in(() -> {
            people.declareConflict(board.director().personId(), trainee);
            return true;
        });
        assertThat(board.in(() -> decisions.ballot(board.chair(), meeting.id(), trainee))
                        .voter(board.director().personId())
                        .orElseThrow()
                        .bar())
                .isEqualTo(Ballot.Bar.CONFLICT);
    }

    @Test
    void aScorerVotesWithTheNumberShownUnlessTheProgrammeSaysOtherwise() {
        SignedIn scorer = board.supervisors().get(0);
        board.in(() -> {
            people.grant(programme, scorer.personId(), Role.COMMITTEE_MEMBER);
            return meetings.extend(board.director(), meeting.id(), List.of(scorer.personId()), List.of())
                    .orThrow();
        });
        Ballot.Voter open = board.in(() -> decisions.ballot(board.chair(), meeting.id(), trainee))
                .voter(scorer.personId())
                .orElseThrow();
        assertThat(open.bar()).isNull();
        assertThat(open.scored()).isEqualTo(1);
        board.in(() -> settings.change(board.director(), programme, SettingKey.SCORERS_VOTE, "0", "small programme")
                .orThrow());
        assertThat(board.in(() -> decisions.ballot(board.chair(), meeting.id(), trainee))
                        .voter(scorer.personId())
                        .orElseThrow()
                        .bar())
                .isEqualTo(Ballot.Bar.SCORED);
    }

    @Test
    void moreVotesAgainstThanForDecideNothing() {
        Map<UUID, Vote> votes = new HashMap<>(draft().votes());
        votes.replaceAll((member, vote) -> Vote.AGAINST);
        assertThat(keys(fixture.sign(board, meeting, with(draft(), votes))))
                .containsExactly("committee.refusal.majority");
        votes.replaceAll((member, vote) -> Vote.ABSTAINED);
        assertThat(keys(fixture.sign(board, meeting, with(draft(), votes))))
                .as("nobody for it is no majority")
                .containsExactly("committee.refusal.majority");
    }

    @Test
    void onlyTheChairWritesAndOnlyWhileTheMeetingIsOpen() {
        SignedIn other = board.members().get(1);
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() -> board.in(() -> decisions.write(other, meeting.id(), trainee, draft())));
        DecisionDraft draft = draft();
        board.in(() ->
                meetings.move(board.chair(), meeting.id(), MeetingState.CLOSED).orThrow());
        assertThat(keys(board.in(() -> decisions.write(board.chair(), meeting.id(), trainee, draft))))
                .containsExactly("committee.refusal.not-open");
    }

    @Test
    void aMeetingWithSomethingWrittenIsNotClosed() {
        board.in(() ->
                decisions.write(board.chair(), meeting.id(), trainee, draft()).orThrow());
        assertThat(keys(board.in(() -> meetings.move(board.chair(), meeting.id(), MeetingState.CLOSED))))
                .containsExactly("committee.refusal.draft-open");
        board.in(() -> {
            decisions.drop(board.chair(), meeting.id(), trainee);
            return meetings.move(board.chair(), meeting.id(), MeetingState.CLOSED)
                    .orThrow();
        });
    }

    @Test
    void whatChangedSinceItWasReadIsNotSigned() {
        board.in(() ->
                decisions.write(board.chair(), meeting.id(), trainee, draft()).orThrow());
        String hash = board.in(
                () -> decisions.preview(board.chair(), meeting.id(), trainee).hash());
        fixture.present(board, meeting, Set.of(board.chair().personId()));
        assertThatExceptionOfType(StaleData.class)
                .isThrownBy(() -> board.in(() -> decisions.sign(
                        board.chair(),
                        meeting.id(),
                        trainee,
                        hash,
                        new Credential.Password(TestOrganisations.PASSWORD))));
    }

    @Test
    void aWrongPasswordSignsNothingAndKeepsWhatIsWritten() {
        board.in(() ->
                decisions.write(board.chair(), meeting.id(), trainee, draft()).orThrow());
        Attempt<Decision> attempt = board.in(() -> decisions.sign(
                board.chair(),
                meeting.id(),
                trainee,
                decisions.preview(board.chair(), meeting.id(), trainee).hash(),
                new Credential.Password("not the password")));
        assertThat(keys(attempt)).isNotEmpty();
        assertThat(board.in(() -> decisions.draft(board.chair(), meeting.id(), trainee)))
                .isPresent();
        assertThat(board.in(() -> decisions.ofMeeting(board.chair(), meeting.id())))
                .isEmpty();
    }

    @Test
    void aMatterIsDecidedOnceInAMeetingAndReplacedInALaterOne() {
        Decision first = fixture.decided(board, meeting, EntitlementLevel.E1);
        assertThat(keys(fixture.sign(board, meeting, draft()))).containsExactly("committee.refusal.decided");
        board.in(() -> {
            decisions.drop(board.chair(), meeting.id(), trainee);
            return true;
        });
        Meeting later = fixture.open(board);
        Decision second = fixture.decided(board, later, EntitlementLevel.E0);
        assertThat(second.content().replaces()).isEqualTo(new DecisionContent.Referred(first.id(), first.hash()));
        assertThat(board.in(() -> decisions.read(board.director(), first.id())).replaced())
                .isTrue();
        assertThat(board.in(() -> entitlements.of(programme, trainee)))
                .extracting(Entitlement::level)
                .containsExactly(EntitlementLevel.E0);
    }

    @Test
    void administratorsSupervisorsAndStrangersDoNotReadADecision() {
        Decision decision = fixture.decided(board, meeting, EntitlementLevel.E1);
        for (SignedIn nobody :
                List.of(board.administrator(), board.supervisors().get(1))) {
            assertThatExceptionOfType(NotFound.class)
                    .isThrownBy(() -> board.in(() -> decisions.read(nobody, decision.id())));
        }
        assertThat(board.in(() -> decisions.ofMeeting(board.administrator(), meeting.id())))
                .isEmpty();
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() -> organisations.open().in(() -> decisions.read(board.director(), decision.id())));
    }

    @Test
    void theLetterIsDueInTenWorkingDaysAndGivenOnce() {
        Decision decision = fixture.decided(board, meeting, EntitlementLevel.E1);
        assertThat(board.in(() -> duties.of(board.administrator())).get(0).letters())
                .singleElement()
                .satisfies(letter -> assertThat(letter.overdue()).isFalse());
        clock.at(clock.instant().plus(Duration.ofDays(20)), () -> {
            assertThat(board.in(() -> duties.of(board.director())).get(0).letters())
                    .singleElement()
                    .satisfies(letter -> assertThat(letter.overdue()).isTrue());
            return true;
        });
        Act first = board.in(
                () -> acts.sendLetter(board.administrator(), decision.id()).orThrow());
        Act again =
                board.in(() -> acts.sendLetter(board.director(), decision.id()).orThrow());
        assertThat(again).isEqualTo(first);
        assertThat(board.in(() -> duties.of(board.administrator())).get(0).letters())
                .isEmpty();
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() -> board.in(() -> acts.sendLetter(board.trainee(), decision.id())));
    }

    @Test
    void anAppealIsHeardByPeopleWhoWereNotThere() {
        Decision decision = fixture.decided(board, meeting, EntitlementLevel.E1);
        UUID id = decision.id();
        board.in(() -> acts.appeal(board.trainee(), id, CommitteeFixture.signature("I have done more than this says."))
                .orThrow());
        List<UUID> able = board.in(() -> acts.hearers(board.director(), id)).stream()
                .map(person -> person.id())
                .toList();
        assertThat(able)
                .containsExactlyInAnyOrderElementsOf(
                        board.supervisors().stream().map(SignedIn::personId).toList());
        assertThat(keys(board.in(() ->
                        acts.namePanel(board.director(), id, able.subList(0, 2), CommitteeFixture.signature("")))))
                .containsExactly("committee.refusal.panel-few");
        assertThat(keys(board.in(
                        () -> acts.namePanel(board.director(), id, board.invited(), CommitteeFixture.signature("")))))
                .containsExactly("committee.refusal.panel-who");
        board.in(() -> acts.namePanel(board.director(), id, able.subList(0, 3), CommitteeFixture.signature(""))
                .orThrow());
        SignedIn hearer = board.organisation().now(able.get(0));
        assertThatExceptionOfType(NotFound.class)
                .as("the director was at the decision")
                .isThrownBy(() -> board.in(() -> acts.decideAppeal(
                        board.director(), id, true, CommitteeFixture.signature("We looked at the records again."))));
        board.in(
                () -> acts.decideAppeal(hearer, id, true, CommitteeFixture.signature("We looked at the records again."))
                        .orThrow());
        DecisionFile file = board.in(() -> decisions.read(hearer, id));
        assertThat(file.appeal()).isEqualTo(DecisionFile.Appeal.UPHELD);
        assertThat(file.acts())
                .allSatisfy(act -> assertThat(board.in(() -> ledger.find(LeafKind.COMMITTEE_ACT, act.id())))
                        .isPresent());
    }

    @Test
    void theTimeForAnAppealRunsFromTheLetter() {
        Decision decision = fixture.decided(board, meeting, EntitlementLevel.E1);
        board.in(() -> acts.sendLetter(board.director(), decision.id()).orThrow());
        String words = "I have done more than this says.";
        clock.at(clock.instant().plus(Duration.ofDays(29)), () -> {
            assertThat(keys(board.in(
                            () -> acts.appeal(board.trainee(), decision.id(), CommitteeFixture.signature(words)))))
                    .containsExactly("committee.refusal.appeal-late");
            return true;
        });
        assertThat(keys(board.in(
                        () -> acts.appeal(board.trainee(), decision.id(), CommitteeFixture.signature("short")))))
                .containsExactly("committee.refusal.reason");
        assertThat(keys(board.in(() -> acts.appeal(board.trainee(), decision.id(), CommitteeFixture.signature(words)))))
                .isEmpty();
    }

    @Test
    void aGapProposesAndOnlyADirectorSuspends() {
        fixture.decided(board, meeting, EntitlementLevel.E1);
        Suspensions.Of what = new Suspensions.Of(programme, trainee, Family.TRABECULECTOMY);
        assertThat(board.in(() -> suspensions.gaps(board.director(), programme)))
                .singleElement()
                .satisfies(gap -> assertThat(gap.days()).isGreaterThan(182));
        assertThat(board.in(() -> entitlements.of(programme, trainee)).get(0).suspended())
                .as("it only proposes")
                .isFalse();
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() -> board.in(() -> suspensions.suspend(
                        board.chair(), what, SuspensionGround.GAP, CommitteeFixture.signature("No case for long."))));
        board.in(() -> suspensions
                .suspend(board.director(), what, SuspensionGround.GAP, CommitteeFixture.signature("No case for long."))
                .orThrow());
        assertThat(board.in(() -> entitlements.of(programme, trainee)).get(0).suspended())
                .isTrue();
        assertThat(keys(board.in(() -> suspensions.suspend(
                        board.director(),
                        what,
                        SuspensionGround.GAP,
                        CommitteeFixture.signature("Said a second time.")))))
                .containsExactly("committee.refusal.nothing.SUSPENDED");
        board.in(() -> suspensions
                .reinstate(board.director(), what, CommitteeFixture.signature("Two refresher cases went well."))
                .orThrow());
        assertThat(board.in(() -> entitlements.of(programme, trainee)).get(0).suspended())
                .isFalse();
        assertThat(board.in(() -> suspensions.history(board.trainee(), programme, trainee)))
                .hasSize(2);
    }

    @Test
    void aDirectorWhoReviewedAContestDoesNotDecide() {
        SignedIn scorer = board.supervisors().get(0);
        SignedIn reviewer = board.supervisors().get(3);
        SignedSheet record = history.signed(
                board.organisation(), board.trainee(), scorer, clock.instant().minus(Duration.ofHours(6)), Map.of());
        board.in(() -> {
            UUID contest = contests.open(
                            board.trainee(),
                            record.id(),
                            List.of(),
                            CommitteeFixture.signature("I did this step alone."))
                    .orThrow()
                    .id();
            contests.reply(scorer, contest, CommitteeFixture.signature("I held the flap for a while."))
                    .orThrow();
            contests.nameReviewer(board.director(), contest, reviewer.personId(), CommitteeFixture.signature(""))
                    .orThrow();
            contests.decide(reviewer, contest, false, CommitteeFixture.signature("The record of the day settles it."))
                    .orThrow();
            people.grant(programme, reviewer.personId(), Role.DIRECTOR);
            return meetings.extend(board.director(), meeting.id(), List.of(reviewer.personId()), List.of())
                    .orThrow();
        });
        assertThat(board.in(() -> decisions.ballot(board.chair(), meeting.id(), trainee))
                        .voter(reviewer.personId())
                        .orElseThrow()
                        .bar())
                .isEqualTo(Ballot.Bar.REVIEWED);
    }
}
