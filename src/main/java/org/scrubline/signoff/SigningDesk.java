package org.scrubline.signoff;

import static java.util.Objects.requireNonNull;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.scrubline.casework.SheetState;
import org.scrubline.casework.Sheets;
import org.scrubline.casework.SurgicalCase;
import org.scrubline.ledger.Assertions;
import org.scrubline.ledger.LeafKind;
import org.scrubline.ledger.Ledger;
import org.scrubline.platform.Attempt;
import org.scrubline.platform.CanonicalJson;
import org.scrubline.platform.CredentialUsed;
import org.scrubline.platform.Recognised;
import org.scrubline.platform.Refusal;
import org.scrubline.platform.SignedIn;
import org.scrubline.platform.StaleData;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Reviewing and signing, one transaction each. Whoever calls has recognised the signer. */
@Service
@Transactional
class SigningDesk {

    private final Reviews reviews;
    private final SigningStatements statements;
    private final SigningRules rules;
    private final Sheets sheets;
    private final VersionObstacles versions;
    private final SignedSheetStore store;
    private final SignedSheetQueries queries;
    private final CountersignRule countersigning;
    private final Lateness lateness;
    private final DeviceClocks devices;
    private final Ledger ledger;
    private final Assertions assertions;
    private final ApplicationEventPublisher events;
    private final Clock clock;

    SigningDesk(
            Reviews reviews,
            SigningStatements statements,
            SigningRules rules,
            Sheets sheets,
            VersionObstacles versions,
            SignedSheetStore store,
            SignedSheetQueries queries,
            CountersignRule countersigning,
            Lateness lateness,
            DeviceClocks devices,
            Ledger ledger,
            Assertions assertions,
            ApplicationEventPublisher events,
            Clock clock) {
        this.reviews = reviews;
        this.statements = statements;
        this.rules = rules;
        this.sheets = sheets;
        this.versions = versions;
        this.store = store;
        this.queries = queries;
        this.countersigning = countersigning;
        this.lateness = lateness;
        this.devices = devices;
        this.ledger = ledger;
        this.assertions = assertions;
        this.events = events;
        this.clock = clock;
    }

    /** Answers {@code NotFound} to anyone but the scorer. */
    @Transactional(readOnly = true)
    public void recognise(SignedIn scorer, UUID sheetId) {
        reviews.own(scorer, sheetId);
    }

    @Transactional(readOnly = true)
    public SigningPreview preview(SignedIn scorer, UUID sheetId) {
        Review review = reviews.of(scorer, sheetId);
        String json = CanonicalJson.of(review.content());
        return new SigningPreview(
                review.sheet(),
                review.content().verdict().toVerdict(),
                json,
                CanonicalJson.sha256(json),
                obstacles(review, clock.instant()),
                SigningRules.blank(review.sheet(), review.published().rubric()).size());
    }

    /** Signs what is stored if it still has the reviewed hash. */
    public Attempt<SignedSheet> sign(SignedIn scorer, UUID sheetId, String reviewedHash, Recognised how) {
        Review review = reviews.held(scorer, sheetId);
        if (review.sheet().state() == SheetState.SIGNED) {
            return Attempt.done(first(sheetId, reviewedHash, SignedContent::reviewedHash));
        }
        String hash = CanonicalJson.sha256(CanonicalJson.of(review.content()));
        if (!hash.equals(reviewedHash)) {
            throw stale("/sheets/" + sheetId + "/review", reviewedHash, hash);
        }
        return sign(review, hash, how, now());
    }

    /** What a device is told before it is offline, and the record the sheet has become if it is signed. */
    @Transactional(readOnly = true)
    public TableSigning atTheTable(SignedIn scorer, UUID sheetId) {
        Review review = reviews.of(scorer, sheetId);
        return new TableSigning(
                TableStatement.fixed(TableStatement.tree(review.content())),
                review.sheet().reopening() == null && statements.accepted(scorer.personId()),
                review.sheet().state() == SheetState.SIGNED
                        ? queries.newest(sheetId).map(TableSigning.Signed::of).orElseThrow()
                        : null);
    }

    /** Signs what is stored if it is what was signed on the device. */
    public Attempt<SignedSheet> signAtTheTable(
            SignedIn scorer, UUID sheetId, TableSignature signature, Recognised how) {
        Review review = reviews.held(scorer, sheetId);
        if (review.sheet().state() == SheetState.SIGNED) {
            return Attempt.done(first(sheetId, signature.hash(), SignedContent::credentialHash));
        }
        String stored = TableStatement.hash(TableStatement.tree(review.content()), signature.at(), signature.zone());
        if (!stored.equals(signature.hash())) {
            throw stale("/sheets/" + sheetId + "/review", signature.hash(), stored);
        }
        return sign(
                review,
                CanonicalJson.sha256(CanonicalJson.of(review.content())),
                how,
                devices.of(review.operation(), review.sheet(), signature));
    }

    /** Signs what is stored, whatever it is; what was signed before is answered again. */
    public Attempt<SignedSheet> sign(SignedIn scorer, UUID sheetId) {
        Review review = reviews.held(scorer, sheetId);
        return review.sheet().state() == SheetState.SIGNED
                ? Attempt.done(queries.newest(sheetId).orElseThrow())
                : sign(review, CanonicalJson.sha256(CanonicalJson.of(review.content())), null, now());
    }

    /**
     * The sheet is held: of many at once one signs and the others wait for it and answer with its signature. So is its
     * case: what is signed is what stands there.
     */
    private Attempt<SignedSheet> sign(Review review, String hash, @Nullable Recognised how, SigningTime time) {
        List<Refusal> obstacles = obstacles(review, time.at());
        if (!obstacles.isEmpty()) {
            return Attempt.refused(obstacles);
        }
        UUID sheet = review.sheet().id();
        if (!sheets.markSigned(sheet, review.sheet().lockVersion())) {
            return Attempt.done(first(sheet, hash, SignedContent::reviewedHash));
        }
        SignedSheet signed = signed(review, hash, how == null ? null : how.used(), time);
        store.insert(signed);
        events.publishEvent(SheetSigned.of(signed, review.operation().reference(), time.device()));
        events.publishEvent(new EvidenceAdded(signed.id(), signed.programmeId(), signed.procedureCode()));
        ledger.append(LeafKind.SIGNATURE, signed.id());
        if (how != null) {
            assertions.keep(LeafKind.SIGNATURE, signed.id(), how);
        }
        return Attempt.done(
                signed.versionNo() == 1 ? signed : queries.byId(signed.id()).orElseThrow());
    }

    /** How late it is was judged when the first version was signed, and stays. */
    private SignedSheet signed(Review review, String hash, @Nullable CredentialUsed credential, SigningTime time) {
        SurgicalCase operation = review.operation();
        SignedSheet before = review.sheet().reopening() == null
                ? null
                : queries.newest(review.sheet().id()).orElseThrow();
        SignedContent content = new SignedContent(
                review.content(),
                hash,
                time.at(),
                requireNonNull(operation.endedZone()),
                before == null ? lateness.late(operation, time.at()) : before.late(),
                credential,
                countersigning.reasons(review.content()),
                lateness.release(review.sheet().id()),
                time.device());
        return content.record(operation, time.receivedAt(), before == null ? time.at() : before.firstSignedAt());
    }

    /** The signature this hash already has; another one is out of date. */
    private SignedSheet first(UUID sheetId, String hash, Function<SignedContent, String> of) {
        SignedSheet signed =
                queries.newest(sheetId).orElseThrow(() -> new StaleData("/sheets/" + sheetId + "/review", List.of()));
        String signedHash = of.apply(SignedContent.read(signed.content()));
        if (!signedHash.equals(hash)) {
            throw stale("/signed/" + signed.id(), hash, signedHash);
        }
        return signed;
    }

    private SigningTime now() {
        return SigningTime.here(clock.instant().truncatedTo(ChronoUnit.MILLIS));
    }

    private List<Refusal> obstacles(Review review, Instant at) {
        List<Refusal> obstacles = new ArrayList<>(rules.obstacles(
                review.operation(), review.sheet(), review.published().rubric(), at));
        versions.obstacle(review.sheet()).ifPresent(obstacles::add);
        return obstacles;
    }

    private static StaleData stale(String back, String reviewed, String stored) {
        return new StaleData(back, List.of(new StaleData.Line("SHA-256", reviewed, stored)));
    }
}
