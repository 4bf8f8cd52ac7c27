package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.platform.Credential;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.context.annotation.Import;
import org.springframework.transaction.support.TransactionTemplate;

/** History written below the credential check is the same evidence as what a person signs with a password. */
@ScrublineTest
@Import({SheetFixture.class, SigningFixture.class})
class SameBytesTests {

    private static final Instant ENDED = Instant.parse("2026-03-02T10:00:00Z");
    private static final Instant SIGNED = ENDED.plus(Duration.ofHours(2));

    @Autowired
    private TestOrganisations organisations;

    @Autowired
    private SheetFixture cases;

    @Autowired
    private SigningFixture fixture;

    @Autowired
    private Signing signing;

    @Autowired
    private TransactionTemplate transaction;

    @Autowired
    private ScrublineClock clock;

    @Test
    void theSameSheetSignedBothWaysHasTheSameBytesButForTheCredential() {
        Theatre theatre = clock.at(ENDED, () -> cases.theatre(organisations));
        UUID sheet = clock.at(ENDED.plusSeconds(900), () -> fixture.complete(theatre, ENDED));
        String hash = clock.at(SIGNED, () -> fixture.preview(theatre, sheet)).contentHash();
        String byPassword = takenBack(
                theatre,
                () -> signing.sign(
                                theatre.supervisor(), sheet, hash, new Credential.Password(TestOrganisations.PASSWORD))
                        .orThrow());
        String below = takenBack(
                theatre,
                () -> signing.signWithoutCredential(theatre.supervisor(), sheet).orThrow());
        assertThat(byPassword).contains("\"credential\":{").isNotEqualTo(below);
        assertThat(byPassword.replaceFirst("\"credential\":\\{[^}]*}", "\"credential\":null"))
                .isEqualTo(below);
    }

    /** Signs at one instant, and undoes it, so that the other way meets the very same sheet. */
    private String takenBack(Theatre theatre, Supplier<SignedSheet> signature) {
        return clock.at(
                SIGNED,
                () -> theatre.organisation()
                        .in(() -> transaction.execute(status -> {
                            status.setRollbackOnly();
                            return signature.get().content();
                        })));
    }
}
