package org.scrubline.platform.factor;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.TestOrganisations;
import org.scrubline.support.TestOrganisations.TestOrganisation;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;

@ScrublineTest
class SecondFactorsTests {

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SecondFactors factors;

    @Autowired
    JdbcClient jdbc;

    @Autowired
    ScrublineClock clock;

    TestOrganisation organisation;
    SignedIn who;
    AuthenticatorApp app;
    List<String> recovery;
    Instant now;

    @BeforeEach
    void setUp() {
        organisation = organisations.open();
        who = organisation.join("Ansel Verrin", Role.SUPERVISOR);
        now = clock.instant();
        String sealed = factors.newSecret(who.accountId());
        app = new AuthenticatorApp(factors.offer(who, sealed).orElseThrow().secret());
        recovery = in(now, () -> factors.add(who, sealed, app.code(now))).orThrow();
    }

    @Test
    void aCodeIsTakenOnceAndTheFirstOneIsUsedUpBySettingUp() {
        assertThat(reason(check(app.code(now), now))).isEqualTo("refusal.code.wrong");
        Instant next = now.plusSeconds(30);
        assertThat(check(app.code(next), next)).isInstanceOf(Attempt.Done.class);
        assertThat(check(app.code(next), next)).isInstanceOf(Attempt.Refused.class);
    }

    @Test
    void noCodeOfAnEarlierStepIsTakenAfterALaterOne() {
        Instant late = now.plusSeconds(90);
        assertThat(check(app.code(late), late)).isInstanceOf(Attempt.Done.class);
        assertThat(check(app.code(late.minusSeconds(30)), late)).isInstanceOf(Attempt.Refused.class);
    }

    @Test
    void ofManyRequestsWithTheSameCodeOneIsTaken() throws Exception {
        Instant next = now.plusSeconds(30);
        String code = app.code(next);
        assertThat(racing(() -> check(code, next))).as("app").isEqualTo(1);
        assertThat(racing(() -> check(recovery.get(3), next))).as("recovery").isEqualTo(1);
    }

    private static long racing(Callable<Attempt<SignedIn>> attempt) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(4);
        try {
            // Fewer than make the account wait, so that each is really looked at.
            List<Future<Attempt<SignedIn>>> all =
                    threads.invokeAll(Stream.generate(() -> attempt).limit(4).toList());
            long taken = 0;
            for (Future<Attempt<SignedIn>> one : all) {
                taken += one.get() instanceof Attempt.Done ? 1 : 0;
            }
            return taken;
        } finally {
            threads.shutdown();
        }
    }

    @Test
    void aCodeMayBeTypedInGroups() {
        Instant next = now.plusSeconds(30);
        String code = app.code(next);
        assertThat(check(" " + code.substring(0, 3) + " " + code.substring(3), next))
                .isInstanceOf(Attempt.Done.class);
    }

    @Test
    void eachRecoveryCodeOpensOnceHoweverItIsTyped() {
        assertThat(recovery).hasSize(10).doesNotHaveDuplicates();
        assertThat(recovery.get(0)).matches("[A-Z2-9]{5}(-[A-Z2-9]{5}){4}");
        String typed = recovery.get(0).toLowerCase(java.util.Locale.ROOT).replace('-', ' ');
        assertThat(check(typed, now)).isInstanceOf(Attempt.Done.class);
        assertThat(check(recovery.get(0), now)).isInstanceOf(Attempt.Refused.class);
        assertThat(factors.recoveryCodesLeft(who.accountId())).isEqualTo(9);
    }

    @Test
    void nobodyElsesCodeOpens() {
        SignedIn other = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        assertThat(organisation.in(() -> factors.check(other, recovery.get(0)))).isInstanceOf(Attempt.Refused.class);
        Instant next = now.plusSeconds(30);
        assertThat(in(next, () -> factors.check(other, app.code(next)))).isInstanceOf(Attempt.Refused.class);
        assertThat(check(recovery.get(0), now)).isInstanceOf(Attempt.Done.class);
    }

    @Test
    void afterFiveWrongCodesARightOneHasToWait() {
        for (int i = 0; i < 5; i++) {
            assertThat(reason(check("wrong " + i, now))).isEqualTo("refusal.code.wrong");
        }
        Instant next = now.plusSeconds(10);
        assertThat(reason(check(recovery.get(0), next))).isEqualTo("refusal.code.wait");
        Instant later = now.plus(Duration.ofMinutes(1));
        assertThat(check(app.code(later), later)).isInstanceOf(Attempt.Done.class);
    }

    @Test
    void newRecoveryCodesReplaceTheOldOnesAgainstACode() {
        assertThat(in(now, () -> factors.renewRecoveryCodes(who, "nothing"))).isInstanceOf(Attempt.Refused.class);
        List<String> fresh =
                in(now, () -> factors.renewRecoveryCodes(who, recovery.get(1))).orThrow();
        assertThat(fresh).hasSize(10).doesNotContainAnyElementsOf(recovery);
        assertThat(check(recovery.get(2), now)).isInstanceOf(Attempt.Refused.class);
        assertThat(check(fresh.get(2), now)).isInstanceOf(Attempt.Done.class);
    }

    @Test
    void theAppGoesAgainstACodeAndTakesItsRecoveryCodesAlong() {
        assertThat(in(now, () -> factors.remove(who, "nothing"))).isInstanceOf(Attempt.Refused.class);
        assertThat(factors.app(who.accountId())).isPresent();
        in(now, () -> factors.remove(who, recovery.get(0))).orThrow();
        assertThat(factors.app(who.accountId())).isEmpty();
        assertThat(check(recovery.get(1), now)).isInstanceOf(Attempt.Refused.class);
    }

    @Test
    void thereIsOneAppAndItIsNotReplacedUnseen() {
        String second = factors.newSecret(who.accountId());
        AuthenticatorApp other =
                new AuthenticatorApp(factors.offer(who, second).orElseThrow().secret());
        assertThat(reason(in(now, () -> factors.add(who, second, other.code(now)))))
                .isEqualTo("refusal.code.known");
    }

    @Test
    void aSecretShownToOnePersonIsNobodyElses() {
        SignedIn other = organisation.join("Ottilie Brannock", Role.SUPERVISOR);
        String sealed = factors.newSecret(who.accountId());
        assertThat(factors.offer(other, sealed)).isEmpty();
        assertThat(reason(in(now, () -> factors.add(other, sealed, app.code(now)))))
                .isEqualTo("refusal.code.first");
    }

    @Test
    void theTablesHoldNeitherTheSecretNorTheCodes() {
        String row = jdbc.sql("select a::text from code_app a where account_id = :id")
                .param("id", who.accountId())
                .query(String.class)
                .single();
        assertThat(row)
                .doesNotContain(
                        factors.offer(who, sealed()).orElseThrow().secret().replace(" ", ""));
        List<String> hashes = jdbc.sql("select code_hash from recovery_code where account_id = :id")
                .param("id", who.accountId())
                .query(String.class)
                .list();
        assertThat(hashes).hasSize(10).allMatch(hash -> hash.matches("[0-9a-f]{64}"));
    }

    private String sealed() {
        return jdbc.sql("select sealed_secret from code_app where account_id = :id")
                .param("id", who.accountId())
                .query(String.class)
                .single();
    }

    private Attempt<SignedIn> check(String code, Instant at) {
        return in(at, () -> factors.check(who, code));
    }

    private <T> T in(Instant at, java.util.function.Supplier<T> work) {
        return organisation.in(() -> clock.at(at, work));
    }

    private static String reason(Attempt<?> attempt) {
        return attempt.fold(
                done -> "done",
                reasons -> reasons.stream().map(Refusal::messageKey).findFirst().orElseThrow());
    }
}
