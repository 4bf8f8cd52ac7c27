package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.scrubline.signoff.VersionFixture.refusals;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.people.SettingKey;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Credential;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;

/** A sheet closed by time, and its release. Limits are the project's own defaults. */
@ScrublineTest
class LateReleaseTests {

    private static final String WHY = "The scorer was on leave; the video was at hand.";

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    VersionFixture versions;

    @Autowired
    LateReleases releases;

    @Autowired
    Signing signing;

    @Autowired
    SigningOutlook outlook;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    SignedIn director;
    UUID sheet;

    @BeforeEach
    void closeASheetByTime() {
        theatre = sheetFixture.theatre(organisations);
        director = theatre.organisation().join("Corisande Delmarr", Role.DIRECTOR);
        sheet = fixture.complete(theatre, ended(Duration.ofDays(15)));
    }

    @Test
    void aClosedSheetIsListedForTheDirectorAndOpensWithTheRelease() {
        assertThat(refusals(sign())).containsExactly("signoff.refusal.closed");
        assertThat(listed()).extracting(ClosedSheet::sheetId).containsExactly(sheet);
        assertThat(listed().get(0).released()).isNull();

        release(WHY).orThrow();
        SignedSheet signed = sign().orThrow();

        SignedContent.Release released = SignedContent.read(signed.content()).release();
        assertThat(released).isNotNull();
        assertThat(released.name()).isEqualTo("Corisande Delmarr");
        assertThat(released.role()).isEqualTo("DIRECTOR");
        assertThat(released.reason()).isEqualTo(WHY);
        assertThat(signed.late()).isTrue();
        assertThat(versions.leaves(theatre, released.id())).isEqualTo(1);
        assertThat(listed()).as("signed, it waits no longer").isEmpty();
    }

    @Test
    void aSheetInTimeIsNeitherListedNorReleased() {
        UUID inTime = fixture.complete(theatre, ended(Duration.ofDays(13)));
        assertThat(listed()).extracting(ClosedSheet::sheetId).doesNotContain(inTime);
        assertThatThrownBy(() -> theatre.organisation()
                        .in(() -> releases.release(
                                director, inTime, WHY, new Credential.Password(TestOrganisations.PASSWORD))))
                .isInstanceOf(NotFound.class);
    }

    @Test
    void aReleaseOfOneSheetOpensNoOther() {
        UUID other = fixture.complete(theatre, ended(Duration.ofDays(15)));
        release(WHY).orThrow();
        assertThat(refusals(
                        theatre.organisation().in(() -> signing.signWithoutCredential(theatre.supervisor(), other))))
                .containsExactly("signoff.refusal.closed");
    }

    @Test
    void aReleaseNeedsItsReasonAndTheRightPassword() {
        assertThat(refusals(release("  "))).containsExactly("signoff.refusal.release-reason");
        assertThat(refusals(theatre.organisation()
                        .in(() -> releases.release(director, sheet, WHY, new Credential.Password("not the password")))))
                .containsExactly("refusal.password.wrong");
        assertThat(listed().get(0).released()).isNull();
    }

    @Test
    void nobodyButADirectorOfTheProgrammeReleases() {
        SignedIn elsewhere = organisations.open().join("Corin Vale", Role.DIRECTOR);
        for (SignedIn who : List.of(theatre.supervisor(), theatre.trainee(), elsewhere)) {
            assertThatThrownBy(() -> theatre.organisation()
                            .in(() -> releases.release(
                                    who, sheet, WHY, new Credential.Password(TestOrganisations.PASSWORD))))
                    .isInstanceOf(NotFound.class);
        }
    }

    @Test
    void e5ADirectorWhoIsNoneAnyMoreReleasesNothing() {
        versions.endRole(theatre, director);
        assertThat(refusals(release(WHY))).containsExactly("signoff.refusal.no-director");
        assertThat(refusals(sign())).containsExactly("signoff.refusal.closed");
    }

    @Test
    void e15ReleasingAgainAnswersTheFirst() throws Exception {
        LateRelease first = release(WHY).orThrow();
        assertThat(release("Another reason.").orThrow()).isEqualTo(first);
        assertThat(versions.leaves(theatre, first.id())).isEqualTo(1);
    }

    @Test
    void theOutlookWarnsBeforeLateBeforeClosedAndNamesTheRelease() {
        UUID fresh = fixture.complete(theatre, ended(Duration.ofHours(5)));
        UUID late = fixture.complete(theatre, ended(Duration.ofDays(4)));
        UUID nearly = fixture.complete(theatre, ended(Duration.ofDays(12)));
        assertThat(outlook(fresh).late()).isFalse();
        assertThat(outlook(late).late()).isTrue();
        assertThat(outlook(late).closesSoon()).isFalse();
        assertThat(outlook(nearly).closesSoon()).isTrue();
        assertThat(outlook(nearly).hoursLeft()).isEqualTo(47);
        assertThat(outlook(fresh).countersign()).contains(CountersignReason.NEW_SCORER);
        release(WHY).orThrow();
        assertThat(outlook(sheet).release()).isNotNull();
    }

    @Test
    void aProgrammeThatClosesLaterLetsItBeSignedAndLateStaysWhatItWas() {
        versions.set(theatre, SettingKey.LATE_AFTER, 24);
        UUID dayAndABit = fixture.complete(theatre, ended(Duration.ofHours(30)));
        SignedSheet signed = theatre.organisation()
                .in(() -> signing.signWithoutCredential(theatre.supervisor(), dayAndABit)
                        .orThrow());
        assertThat(signed.late()).isTrue();
        versions.set(theatre, SettingKey.CLOSED_AFTER, 20);
        assertThat(refusals(sign())).isEmpty();
    }

    private SigningOutlook.Outlook outlook(UUID id) {
        return theatre.organisation().in(() -> outlook.of(theatre.supervisor(), id));
    }

    private List<ClosedSheet> listed() {
        return theatre.organisation().in(() -> releases.closed(director));
    }

    private Attempt<LateRelease> release(String reason) {
        return theatre.organisation()
                .in(() ->
                        releases.release(director, sheet, reason, new Credential.Password(TestOrganisations.PASSWORD)));
    }

    private Attempt<SignedSheet> sign() {
        return theatre.organisation().in(() -> signing.signWithoutCredential(theatre.supervisor(), sheet));
    }

    private Instant ended(Duration ago) {
        return clock.instant().minus(ago);
    }
}
