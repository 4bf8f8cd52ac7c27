package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.Cases;
import org.scrubline.casework.Sheet;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.platform.Refusal;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Rubrics;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** Rules whose breach the tables refuse to hold, so that no page can show it. */
@ScrublineTest
class SigningRulesTests {

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SigningRules rules;

    @Autowired
    Cases cases;

    @Autowired
    Rubrics rubrics;

    @Autowired
    Clock clock;

    @Test
    void nobodySignsAboutTheirOwnTraining() {
        Theatre theatre = sheetFixture.theatre(organisations);
        Sheet sheet =
                fixture.read(theatre, fixture.complete(theatre, clock.instant().minus(Duration.ofHours(1))));
        UUID supervisor = theatre.supervisor().personId();

        assertThat(obstacles(theatre, sheet)).isEmpty();
        assertThat(obstacles(theatre, about(sheet, supervisor)))
                .containsExactly(Refusal.at(Signing.AUTHORITY, "signoff.refusal.own-training"));
    }

    private List<Refusal> obstacles(Theatre theatre, Sheet sheet) {
        return theatre.organisation().in(() -> {
            SurgicalCase operation = cases.get(sheet.caseId());
            Rubric rubric = rubrics.byId(sheet.rubricVersionId()).orElseThrow().rubric();
            return rules.obstacles(operation, sheet, rubric, Instant.now());
        });
    }

    private static Sheet about(Sheet sheet, UUID trainee) {
        return new Sheet(
                sheet.id(),
                sheet.caseId(),
                trainee,
                sheet.scorerId(),
                sheet.rubricVersionId(),
                sheet.state(),
                sheet.confirmedPart(),
                sheet.givenSupervision(),
                sheet.steps(),
                sheet.inBulk(),
                sheet.measures(),
                sheet.events(),
                sheet.strength(),
                sheet.nextStep(),
                sheet.openedAt(),
                sheet.firstScoredAt(),
                sheet.lockVersion(),
                sheet.reopening());
    }
}
