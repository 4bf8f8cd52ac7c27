package org.scrubline.committee;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.scrubline.committee.CommitteeFixture.Board;
import org.scrubline.committee.pack.Ask;
import org.scrubline.committee.pack.PackContent;
import org.scrubline.committee.pack.PackContent.Answer;
import org.scrubline.committee.pack.PackContent.Gate;
import org.scrubline.committee.pack.PackWriter;
import org.scrubline.committee.pack.PackWriter.Subject;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.people.Introductions;
import org.scrubline.people.People;
import org.scrubline.people.SettingKey;
import org.scrubline.people.Settings;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.signoff.Contests;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.signoff.VoidGround;
import org.scrubline.signoff.Voids;
import org.scrubline.support.History;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.training.TrainingDraft;
import org.scrubline.training.TrainingRecords;
import org.springframework.beans.factory.annotation.Autowired;

@ScrublineTest
class PackTests {

    /** The promise is about so many cases signed after the freezing. */
    private static final int LATER = 100;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    History history;

    @Autowired
    CommitteeFixture fixture;

    @Autowired
    Packs packs;

    @Autowired
    Meetings meetings;

    @Autowired
    Settings settings;

    @Autowired
    People people;

    @Autowired
    Voids voids;

    @Autowired
    Contests contests;

    @Autowired
    TrainingRecords training;

    @Autowired
    Introductions introductions;

    @Autowired
    PackWriter writer;

    @Autowired
    Ledger ledger;

    @Autowired
    ScrublineClock clock;

    @Test
    void aHundredCasesLaterTheEvidenceIsMadeAgainWordForWord() {
        Board board = fixture.board(organisations, history, 13);
        SignedSheet newest = history.signed(
                board.organisation(),
                board.trainee(),
                board.supervisors().get(2),
                clock.instant().minus(Duration.ofDays(1)),
                Map.of());
        Meeting meeting = fixture.planned(board);
        Packs.Frozen frozen = fixture.freeze(board, meeting);
        UUID trainee = board.trainee().personId();
        laterChanges(board, newest);
        for (int i = 0; i < LATER; i++) {
            history.signedAlone(
                    board.organisation(),
                    board.trainee(),
                    board.supervisors().get(i % 4),
                    clock.instant().plus(Duration.ofHours(1 + i)),
                    Map.of("TF03", 1 + i % 5));
        }
        Packs.Rebuilt rebuilt = board.in(() -> packs.rebuild(board.chair(), meeting.id(), trainee));
        assertThat(rebuilt.hash()).isEqualTo(frozen.hash());
        assertThat(rebuilt.same()).isTrue();
        Meeting later = clock.at(clock.instant().plus(Duration.ofDays(6)), () -> fixture.planned(board));
        Packs.Frozen other = clock.at(clock.instant().plus(Duration.ofDays(7)), () -> fixture.freeze(board, later));
        PackContent now =
                board.in(() -> packs.read(board.chair(), later.id(), trainee)).content();
        assertThat(other.hash()).isNotEqualTo(frozen.hash());
        assertThat(now.records()).hasSize(14 + LATER);
        assertThat(now.records()).filteredOn(PackContent.RecordLine::voided).hasSize(1);
        assertThat(now.records()).filteredOn(PackContent.RecordLine::contested).hasSize(1);
    }

    /** Of everything a pack rests on, one thing changes after the freezing. */
    private void laterChanges(Board board, SignedSheet newest) {
        UUID programme = board.organisation().programme().id();
        clock.at(
                clock.instant().plus(Duration.ofMinutes(5)),
                () -> board.in(() -> {
                    settings.change(board.director(), programme, SettingKey.SHOWN_CASES, "9", "looked at again")
                            .orThrow();
                    people.declarePriorExperience(board.trainee().personId(), "TRAB_FORNIX", 30);
                    practised(board);
                    voids.ask(
                                    board.director(),
                                    board.records().get(0).id(),
                                    VoidGround.WRONG_TRAINEE,
                                    CommitteeFixture.signature("This was the case of somebody else."))
                            .orThrow();
                    voids.decide(
                                    board.supervisors().get(0),
                                    board.records().get(0).id(),
                                    true,
                                    CommitteeFixture.signature("I looked at the list of that day."))
                            .orThrow();
                    return contests.open(
                                    board.trainee(),
                                    newest.id(),
                                    List.of(),
                                    CommitteeFixture.signature("I did every step of this case alone."))
                            .orThrow();
                }));
    }

    private void practised(Board board) {
        UUID trainee = board.trainee().personId();
        UUID programme = board.organisation().programme().id();
        String today = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC).toString();
        TrainingDraft flap = new TrainingDraft("WET_LAB", "FLAP", today, "");
        training.write(board.supervisors().get(0), trainee, flap).orThrow();
        introductions.record(board.director(), programme, trainee, today).orThrow();
    }

    @Test
    void theTrainingRecordIsFrozenAsItWasKnownAtTheCutOff() {
        Board board = fixture.board(organisations, history, 0);
        board.in(() -> {
            practised(board);
            return true;
        });
        Meeting before = fixture.planned(board);
        PackContent empty = clock.at(clock.instant().minus(Duration.ofMinutes(10)), () -> read(board, before));
        Meeting after = fixture.planned(board);
        PackContent full = clock.at(clock.instant().plus(Duration.ofMinutes(10)), () -> read(board, after));
        assertThat(empty.training())
                .flatExtracting(PackContent.TrainingLine::asks)
                .noneMatch(PackContent.AskLine::met);
        assertThat(full.training())
                .flatExtracting(PackContent.TrainingLine::asks)
                .filteredOn(PackContent.AskLine::met)
                .extracting(PackContent.AskLine::ask)
                .containsExactly(Ask.PRACTICE, Ask.FLAP_PRACTICE, Ask.SCORER_TRAINING);
    }

    private PackContent read(Board board, Meeting meeting) {
        fixture.freeze(board, meeting);
        return board.in(() ->
                        packs.read(board.chair(), meeting.id(), board.trainee().personId()))
                .content();
    }

    @Test
    void evidenceFrozenBeforeTheTrainingRecordIsReadAndWrittenInItsOwnForm() {
        Board board = fixture.board(organisations, history, 0);
        Meeting meeting = fixture.planned(board);
        PackContent now = read(board, meeting);
        Subject subject = new Subject(now.organisation(), now.programme(), now.meeting(), now.trainee());
        String before = board.in(() -> CanonicalJson.of(writer.write(subject, now.cutOff(), "scrubline-pack/1")));
        assertThat(before).doesNotContain("\"training\"").contains("scrubline-pack/1");
        assertThat(PackContent.read(before).training()).isNull();
        assertThat(CanonicalJson.of(PackContent.read(before))).isEqualTo(before);
    }

    @Test
    void thirteenGoodCasesOfFourScorersPassTheFirstTwoGates() {
        Board board = fixture.board(organisations, history, 13);
        Meeting meeting = fixture.planned(board);
        Packs.Frozen frozen = fixture.freeze(board, meeting);
        Pack pack = board.in(
                () -> packs.read(board.director(), meeting.id(), board.trainee().personId()));
        PackContent content = pack.content();
        assertThat(CanonicalJson.sha256(pack.json())).isEqualTo(frozen.hash());
        assertThat(CanonicalJson.of(content)).as("canonical").isEqualTo(pack.json());
        assertThat(content.records())
                .extracting(PackContent.RecordLine::contentHash)
                .containsExactlyElementsOf(board.records().stream()
                        .map(record -> record.contentHash())
                        .toList());
        assertThat(content.scorers())
                .extracting(PackContent.ScorerLine::records)
                .containsExactly(4, 3, 3, 3);
        assertThat(content.procedures()).singleElement().satisfies(one -> {
            assertThat(one.cases()).isEqualTo(13);
            assertThat(one.shown()).isEmpty();
            assertThat(one.supports()).isEmpty();
            assertThat(one.model()).isNotNull();
        });
        assertThat(content.families().get(0).levels())
                .extracting(PackContent.LevelLine::level)
                .containsExactly("E2", "E3", "E4");
        assertThat(content.families().get(0).level("E4").orElseThrow().answer()).isEqualTo(Answer.NOT_YET);
        assertThat(content.families().get(0).level("E4").orElseThrow().gate()).isEqualTo(Gate.ENTITLEMENT);
        assertThat(board.in(() -> ledger.find(LeafKind.EVIDENCE_PACK, pack.id())))
                .isPresent();
    }

    @Test
    void aThinRecordIsInsufficientEvidenceAndNothingElse() {
        Board board = fixture.board(organisations, history, 3);
        Meeting meeting = fixture.planned(board);
        fixture.freeze(board, meeting);
        PackContent content = board.in(() ->
                        packs.read(board.chair(), meeting.id(), board.trainee().personId()))
                .content();
        assertThat(content.families().get(0).levels())
                .allMatch(level -> level.answer() == Answer.INSUFFICIENT && level.gate() == Gate.SHOWN);
        assertThat(content.procedures().get(0).model()).isNull();
        assertThat(content.cautions()).contains("components.caution.small-sample");
    }

    @Test
    void evidenceIsFrozenOnceAndOnlyForAMeetingAhead() {
        Board board = fixture.board(organisations, history, 0);
        Meeting meeting = fixture.planned(board);
        fixture.freeze(board, meeting);
        UUID trainee = board.trainee().personId();
        assertThat(key(board.in(() -> packs.freeze(board.director(), meeting.id(), trainee))))
                .isEqualTo("committee.refusal.frozen");
        Meeting other = fixture.planned(board);
        board.in(() -> meetings.move(board.director(), other.id(), MeetingState.CANCELLED)
                .orThrow());
        assertThat(key(board.in(() -> packs.freeze(board.director(), other.id(), trainee))))
                .isEqualTo("committee.refusal.over");
    }

    @Test
    void administratorsFreezeAndDoNotReadAndOthersDoNeither() {
        Board board = fixture.board(organisations, history, 0);
        Meeting meeting = fixture.planned(board);
        UUID trainee = board.trainee().personId();
        SignedIn stranger = organisations.open().join("Somebody Else", Role.DIRECTOR);
        for (SignedIn nobody : List.of(board.trainee(), board.supervisors().get(0), stranger)) {
            assertThatExceptionOfType(NotFound.class)
                    .isThrownBy(() -> board.in(() -> packs.freeze(nobody, meeting.id(), trainee)));
            assertThatExceptionOfType(NotFound.class)
                    .isThrownBy(() -> board.in(() -> packs.read(nobody, meeting.id(), trainee)));
        }
        fixture.freeze(board, meeting);
        assertThat(board.in(() -> packs.frozen(board.administrator(), meeting.id())))
                .hasSize(1);
        assertThatExceptionOfType(NotFound.class)
                .isThrownBy(() -> board.in(() -> packs.read(board.administrator(), meeting.id(), trainee)));
        assertThatExceptionOfType(NotFound.class)
                .as("nobody reads about themselves before a decision rests on it")
                .isThrownBy(() -> board.in(() -> packs.read(board.trainee(), meeting.id(), trainee)));
        assertThatExceptionOfType(NotFound.class)
                .as("another organisation does not see it")
                .isThrownBy(() -> organisations.open().in(() -> packs.read(board.chair(), meeting.id(), trainee)));
    }

    private static String key(Attempt<?> attempt) {
        return attempt.<String>fold(done -> "", reasons -> reasons.get(0).messageKey());
    }
}
