package org.scrubline.signoff;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.nullValue;
import static org.springframework.security.test.web.servlet.request.SecurityMockMvcRequestPostProcessors.csrf;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.content;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.jsonPath;
import static org.springframework.test.web.servlet.result.MockMvcResultMatchers.status;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.scrubline.casework.SheetChange;
import org.scrubline.casework.SheetFixture;
import org.scrubline.casework.SheetFixture.Theatre;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.StepState;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.CredentialCheck;
import org.scrubline.ledger.CredentialClaim;
import org.scrubline.ledger.LeafKind;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.Base64Url;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.Credential;
import org.scrubline.platform.NotFound;
import org.scrubline.platform.Passkeys;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.Role;
import org.scrubline.platform.ScrublineClock;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.scrubline.support.LogIn;
import org.scrubline.support.ScrublineTest;
import org.scrubline.support.SoftwarePasskey;
import org.scrubline.support.TestOrganisations;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.http.MediaType;
import org.springframework.test.web.servlet.MockMvc;
import org.springframework.test.web.servlet.ResultActions;
import tools.jackson.databind.JsonNode;

/** A signature made on a device that had no network, as it reaches the server. */
@ScrublineTest
class TableSigningTests {

    private static final ZoneId ZONE = ZoneId.of("Europe/Oslo");

    @Autowired
    MockMvc mockMvc;

    @Autowired
    TestOrganisations organisations;

    @Autowired
    SheetFixture sheetFixture;

    @Autowired
    SigningFixture fixture;

    @Autowired
    Signing signing;

    @Autowired
    Passkeys passkeys;

    @Autowired
    Assertions assertions;

    @Autowired
    ScrublineClock clock;

    Theatre theatre;
    SoftwarePasskey passkey;
    Instant now;

    @BeforeEach
    void openATheatre() {
        theatre = sheetFixture.theatre(organisations);
        passkey = SoftwarePasskey.of(theatre.supervisor().accountId(), passkeys);
        now = clock.instant().truncatedTo(ChronoUnit.SECONDS);
    }

    @Test
    void theRecordNamesBothClocksAndItsTextAloneProvesTheSignature() {
        UUID sheet = complete();
        Instant made = now.plusSeconds(60);
        SignedSheet signed = receive(sheet, made, Duration.ofMinutes(40)).orThrow();

        assertThat(signed.signedAt()).isEqualTo(made);
        assertThat(signed.receivedAt()).isEqualTo(made.plus(Duration.ofMinutes(40)));
        SignedContent content = SignedContent.read(signed.content());
        assertThat(content.device()).isEqualTo(new SignedContent.DeviceTime(made, ZONE, false, false));
        JsonNode text = CanonicalJson.read(signed.content(), JsonNode.class);
        CredentialClaim claim = CredentialClaim.said(TableStatement.signedHash(text), text);
        assertThat(claim.hash()).isEqualTo(content.credentialHash()).isNotEqualTo(content.reviewedHash());
        assertThat(CredentialCheck.fault(
                        claim,
                        theatre.organisation()
                                .in(() -> assertions.of(LeafKind.SIGNATURE, signed.id()))
                                .orElseThrow()))
                .isEmpty();
    }

    @Test
    void whatIsSignedIsTheScoredSheetItsReferencesAndTheClockOfTheDevice() {
        UUID sheet = complete();
        SheetContent content = reviewed(sheet);
        Map<String, String> steps = new TreeMap<>();
        content.steps().forEach(step -> steps.put(step.code(), "4"));
        Map<String, Object> said = new TreeMap<>(Map.of(
                "schema", "scrubline-table/1",
                "sheet", sheet.toString(),
                "reference", content.operation().reference(),
                "endedAt", String.valueOf(content.operation().endedAt()),
                "rubric", content.rubric().contentHash(),
                "signer", theatre.supervisor().personId().toString(),
                "meaning", content.signer().meaning(),
                "part", "WHOLE_CASE",
                "supervision", "SCRUBBED",
                "verdict", "INDEPENDENT"));
        said.putAll(Map.of(
                "strength",
                "",
                "nextStep",
                "",
                "steps",
                steps,
                "measures",
                Map.of(),
                "events",
                List.of(),
                "at",
                "2026-03-29T01:30:00Z",
                "zone",
                "Europe/Oslo"));

        assertThat(hash(sheet, Instant.parse("2026-03-29T01:30:00Z")))
                .isEqualTo(CanonicalJson.sha256(CanonicalJson.of(said)));
    }

    @Test
    void theSameSignatureSentAgainAnswersTheRecordAndAnotherOneIsAConflict() throws Exception {
        UUID sheet = complete();
        String hash = hash(sheet, now);
        String answer = answer(hash);
        String record = record(send(sheet, hash, answer).andExpect(status().isOk()));
        assertThat(record(send(sheet, hash, answer).andExpect(status().isOk()))).isEqualTo(record);
        mockMvc.perform(get("/sheets/{id}/signing", sheet).with(LogIn.as(theatre.supervisor())))
                .andExpect(jsonPath("$.signed.record").value(record))
                .andExpect(jsonPath("$.signed.hash").value(hash));

        String other = hash(sheet, now.minusSeconds(1));
        send(sheet, other, answer(other)).andExpect(status().isConflict());
    }

    @Test
    void aSheetThatMovedOnIsNotSignedAndCanBeSignedAfresh() throws Exception {
        UUID sheet = complete();
        String before = hash(sheet, now);
        String answer = answer(before);
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF09", new StepState.Scored(2)));

        send(sheet, before, answer)
                .andExpect(status().isConflict())
                .andExpect(jsonPath("$.reasons", hasItem(containsString("not the one you signed"))));
        String after = hash(sheet, now);
        send(sheet, after, answer)
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.record", nullValue()));
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);
        send(sheet, after, answer(after)).andExpect(status().isOk());
    }

    @Test
    void madeWithinTheFourteenDaysItIsTakenLaterAndSaysSo() {
        UUID sheet = complete();
        Instant made = now.plus(Duration.ofDays(2));
        assertThat(receiveLongAfter(sheet, made, made).orThrow()).satisfies(signed -> {
            assertThat(signed.late()).isFalse();
            assertThat(SignedContent.read(signed.content()).device().receivedLate())
                    .isTrue();
        });
    }

    @Test
    void withAClockThatIsFarOffTheReceiptCounts() {
        UUID sheet = complete();
        Instant made = now.plus(Duration.ofDays(2));
        Instant farOff = made.minus(Duration.ofHours(1));
        List<String> reasons = receiveLongAfter(sheet, made, farOff)
                .fold(
                        signed -> List.of(),
                        refusals -> refusals.stream().map(Refusal::messageKey).toList());
        assertThat(reasons).containsExactly("signoff.refusal.closed");

        Instant soon = now.plus(Duration.ofHours(3));
        TableSignature signature = signature(sheet, now.plus(Duration.ofHours(1)), soon.plus(Duration.ofMinutes(11)));
        SignedSheet signed = clock.at(soon, () -> sign(sheet, signature)).orThrow();
        assertThat(signed.signedAt()).isEqualTo(soon);
        assertThat(SignedContent.read(signed.content()).device().far()).isTrue();
    }

    @Test
    void anInstantBeforeTheSheetWasThereIsNotBelieved() {
        UUID sheet = complete();
        TableSignature signature = signature(sheet, now.minus(Duration.ofDays(9)), now);
        assertThat(SignedContent.read(sign(sheet, signature).orThrow().content())
                        .device()
                        .far())
                .isTrue();
    }

    @Test
    void whatStillStandsInTheWayIsSaidAndNothingIsSigned() throws Exception {
        UUID sheet = fixture.blank(theatre, now.minus(Duration.ofHours(2)));
        send(sheet, hash(sheet, now), answer(hash(sheet, now)))
                .andExpect(status().isUnprocessableContent())
                .andExpect(jsonPath("$.reasons").isNotEmpty());
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);
    }

    @Test
    void nobodyElseLearnsOfTheSheetOrSignsIt() throws Exception {
        UUID sheet = complete();
        SignedIn colleague = theatre.organisation().join("Marit Solheim", Role.SUPERVISOR);
        for (SignedIn who : List.of(colleague, theatre.trainee())) {
            mockMvc.perform(get("/sheets/{id}/signing", sheet).with(LogIn.as(who)))
                    .andExpect(status().isNotFound());
            assertThatExceptionOfType(NotFound.class)
                    .isThrownBy(() -> theatre.organisation()
                            .in(() -> signing.signAtTheTable(who, sheet, signature(sheet, now, now))));
        }
        mockMvc.perform(post("/sheets/{id}/signing", sheet)
                        .with(csrf())
                        .with(LogIn.as(theatre.supervisor()))
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(body(colleague, hash(sheet, now), answer(hash(sheet, now)))))
                .andExpect(status().isForbidden());
        assertThat(fixture.read(theatre, sheet).state()).isEqualTo(SheetState.OPEN);
    }

    @Test
    void withoutAPasskeyThereIsNothingToSignWith() throws Exception {
        UUID sheet = complete();
        mockMvc.perform(get("/sheets/{id}/signing", sheet).with(LogIn.as(theatre.supervisor())))
                .andExpect(jsonPath("$.keys.credentials").isNotEmpty());
        UUID account = theatre.supervisor().accountId();
        passkeys.remove(account, passkeys.of(account).get(0).id());
        mockMvc.perform(get("/sheets/{id}/signing", sheet).with(LogIn.as(theatre.supervisor())))
                .andExpect(jsonPath("$.keys", nullValue()))
                .andExpect(jsonPath("$.statement.meaning").isNotEmpty());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "null",
                "[]",
                "{}",
                "{\"person\":1}",
                "{\"a\":1,\"a\":2}",
                "{\"person\":\"x\",\"at\":\"yesterday\",\"zone\":\"Europe/Oslo\",\"sent\":\"2026-01-01T00:00:00Z\",\"hash\":\"%s\",\"answer\":\"{}\"}",
                "{\"person\":\"x\",\"at\":\"2026-01-01T00:00:00Z\",\"zone\":\"Moon/Sea\",\"sent\":\"2026-01-01T00:00:00Z\",\"hash\":\"%s\",\"answer\":\"{}\"}",
                "{\"person\":\"x\",\"at\":\"+99999-01-01T00:00:00Z\",\"zone\":\"Europe/Oslo\",\"sent\":\"2026-01-01T00:00:00Z\",\"hash\":\"%s\",\"answer\":\"{}\"}"
            })
    void whatIsNoSignatureIsSaidToBeNone(String text) throws Exception {
        UUID sheet = complete();
        mockMvc.perform(post("/sheets/{id}/signing", sheet)
                        .with(csrf())
                        .with(LogIn.as(theatre.supervisor()))
                        .contentType(MediaType.APPLICATION_JSON)
                        .content(text.replace("%s", "0".repeat(64))))
                .andExpect(status().isBadRequest())
                .andExpect(content().string(containsString("is no signature")));
    }

    @Test
    void aStaleSignatureIsAConflictToTheServiceToo() {
        UUID sheet = complete();
        TableSignature signature = signature(sheet, now, now);
        fixture.change(theatre, sheet, new SheetChange.SetStep("TF09", new StepState.Scored(5)));
        assertThatExceptionOfType(StaleData.class).isThrownBy(() -> sign(sheet, signature));
    }

    private UUID complete() {
        return fixture.complete(theatre, now.minus(Duration.ofHours(2)));
    }

    private SheetContent reviewed(UUID sheet) {
        return SheetContent.read(fixture.preview(theatre, sheet).content());
    }

    private String hash(UUID sheet, Instant at) {
        return TableStatement.hash(TableStatement.tree(reviewed(sheet)), at, ZONE);
    }

    private String answer(String hash) {
        return passkey.answer(Base64Url.text(CanonicalJson.hashBytes(hash)));
    }

    private TableSignature signature(UUID sheet, Instant at, Instant sent) {
        String hash = hash(sheet, at);
        return new TableSignature(at, ZONE, sent, hash, new Credential.PasskeyAssertion(answer(hash)));
    }

    private Attempt<SignedSheet> sign(UUID sheet, TableSignature signature) {
        return theatre.organisation().in(() -> signing.signAtTheTable(theatre.supervisor(), sheet, signature));
    }

    private Attempt<SignedSheet> receive(UUID sheet, Instant made, Duration after) {
        TableSignature signature = signature(sheet, made, made.plus(after));
        return clock.at(made.plus(after), () -> sign(sheet, signature));
    }

    /** Received twenty days after the case. */
    private Attempt<SignedSheet> receiveLongAfter(UUID sheet, Instant made, Instant clockOfTheDevice) {
        Instant received = now.plus(Duration.ofDays(20));
        Duration off = Duration.between(made, clockOfTheDevice);
        TableSignature signature = signature(sheet, made, received.plus(off));
        return clock.at(received, () -> sign(sheet, signature));
    }

    private ResultActions send(UUID sheet, String hash, String answer) throws Exception {
        return mockMvc.perform(post("/sheets/{id}/signing", sheet)
                .with(csrf())
                .with(LogIn.as(theatre.supervisor()))
                .contentType(MediaType.APPLICATION_JSON)
                .content(body(theatre.supervisor(), hash, answer)));
    }

    private String body(SignedIn who, String hash, String answer) {
        return CanonicalJson.of(Map.of(
                "person", who.personId().toString(),
                "at", now.toString(),
                "zone", ZONE.getId(),
                "sent", now.toString(),
                "hash", hash,
                "answer", answer));
    }

    private static String record(ResultActions answered) throws Exception {
        return CanonicalJson.read(answered.andReturn().getResponse().getContentAsString(), JsonNode.class)
                .path("record")
                .asString();
    }
}
