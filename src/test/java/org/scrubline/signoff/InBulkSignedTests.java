package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.StepState;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.signoff.SheetContent.StepLine;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** What a signature keeps of steps answered together, and what it asks about sponges. */
@ScrublineTest
class InBulkSignedTests {

    @Autowired
    SheetFixture sheets;

    @Autowired
    SigningFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    Instant ended;

    @BeforeEach
    void openATheatre() {
        theatre = sheets.theatre(organisations);
        ended = clock.instant().minus(Duration.ofHours(1));
    }

    @Test
    void stepsAnsweredTogetherAreSignedAsSuchAndTheOthersCarryNoSuchMember() {
        UUID id = fixture.blank(theatre, ended);
        fixture.confirmRole(theatre, id);
        fixture.change(theatre, id, new SheetChange.SetStep("TF01", new StepState.Scored(4)));
        fixture.change(theatre, id, new SheetChange.SetBlankSteps(null, new StepState.NotSeen()));

        String json = fixture.preview(theatre, id).content();

        List<StepLine> steps = SheetContent.read(json).steps();
        assertThat(steps)
                .filteredOn(step -> step.inBulk() == null)
                .extracting(StepLine::code)
                .containsExactly("TF01");
        assertThat(steps).filteredOn(step -> Boolean.TRUE.equals(step.inBulk())).hasSize(18);
        assertThat(json)
                .contains("\"code\":\"TF02\",\"critical\":false,\"inBulk\":true,")
                .doesNotContain("false,\"inBulk\":null");
    }

    /** A record of before there was such a member says the same as one without it. */
    @Test
    void aRecordWithoutTheMemberIsReadAsBefore() {
        SignedSheet signed = fixture.signed(theatre, ended);
        assertThat(signed.content()).doesNotContain("inBulk");
        Sheet draft = DraftContent.of(signed, fixture.read(theatre, signed.sheetId()), ended);
        assertThat(draft.inBulk()).isEmpty();
        assertThat(draft.steps()).hasSize(19);
    }

    @Test
    void piecesThatDifferAreCountedAgainOrRecordedAsAnEvent() {
        UUID id = fixture.complete(theatre, ended);
        assertThat(obstacles(id)).as("a measure never blocks by being empty").isEmpty();
        count(id, "TF06-PIECES", 4);
        assertThat(obstacles(id)).isEmpty();
        count(id, "TF07-PIECES", 3);
        assertThat(obstacles(id)).containsExactly("signoff.refusal.pieces");
        count(id, "TF07-PIECES", 4);
        assertThat(obstacles(id)).isEmpty();
        count(id, "TF07-PIECES", 3);
        fixture.change(theatre, id, new SheetChange.AddEvent("SPONGE_RETAINED", "TF07", null, "Found under the flap."));
        assertThat(obstacles(id)).isEmpty();
    }

    private void count(UUID id, String measure, int pieces) {
        fixture.change(theatre, id, new SheetChange.SetMeasure(measure, BigDecimal.valueOf(pieces)));
    }

    private List<String> obstacles(UUID id) {
        return fixture.preview(theatre, id).obstacles().stream()
                .map(Refusal::messageKey)
                .toList();
    }
}
