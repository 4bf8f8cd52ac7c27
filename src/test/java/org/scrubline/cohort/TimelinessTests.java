package org.scrubline.cohort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.scrubline.support.ASignedSheet.START;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.signoff.SignedSheet;

class TimelinessTests {

    @Test
    void eachSheetStandsInOneLineOfTheCount() {
        List<SignedSheet> signed = Stream.of(1L, 24 * 60L, 24 * 60 + 1L, 72 * 60L, 72 * 60 + 1L)
                .map(minutes ->
                        ofDay(0).signedAfter(Duration.ofMinutes(minutes)).build())
                .toList();
        Instant now = START.plus(Duration.ofDays(30));
        List<Instant> open = List.of(
                now.minus(Duration.ofDays(1)),
                now.minus(Duration.ofDays(14)),
                now.minus(Duration.ofDays(14)).minusSeconds(1));

        Timeliness timeliness = Timeliness.of(signed, open, now, ProgrammeSettings.DEFAULTS);

        assertThat(timeliness).isEqualTo(new Timeliness(2, 2, 1, 2, 1));
        assertThat(timeliness.sheets()).isEqualTo(8);
        assertThat(timeliness.percent(2)).isEqualTo(25);
        assertThat(timeliness.percent(1)).as("12.5, half up").isEqualTo(13);
    }

    @Test
    void aNewVersionIsAsLateAsItsFirstWas() {
        List<SignedSheet> signed = List.of(
                ofDay(0).signedAfter(Duration.ofDays(40))
                        .firstSignedAfter(Duration.ofHours(2))
                        .build(),
                ofDay(1).signedAfter(Duration.ofDays(40))
                        .firstSignedAfter(Duration.ofHours(80))
                        .build());

        assertThat(Timeliness.of(signed, List.of(), START.plus(Duration.ofDays(50)), ProgrammeSettings.DEFAULTS))
                .isEqualTo(new Timeliness(1, 0, 1, 0, 0));
    }

    @Test
    void nothingAskedForIsNothing() {
        assertThat(Timeliness.of(List.of(), List.of(), START, ProgrammeSettings.DEFAULTS)
                        .percent(0))
                .isZero();
    }
}
