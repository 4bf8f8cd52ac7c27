-- A little of everything an organisation writes, with the characters that tend to get lost. Fits tables of V006 and later.
INSERT INTO login_account (id, username, password_hash, created_at) VALUES
    ('00000000-0000-4000-8000-0000000000a1', 'brannock', '{argon2}$invented$hash', '2026-01-05T08:00:00Z'),
    ('00000000-0000-4000-8000-0000000000a2', 'hallinor', NULL, '2026-01-05T08:01:00.123456Z'),
    ('00000000-0000-4000-8000-0000000000a3', 'elsewhere', NULL, '2026-01-05T08:02:00Z');
INSERT INTO account_organisation (account_id, tenant_id) VALUES
    ('00000000-0000-4000-8000-0000000000a1', '00000000-0000-4000-8000-000000000001'),
    ('00000000-0000-4000-8000-0000000000a2', '00000000-0000-4000-8000-000000000001'),
    ('00000000-0000-4000-8000-0000000000a1', '00000000-0000-4000-8000-000000000002'),
    ('00000000-0000-4000-8000-0000000000a3', '00000000-0000-4000-8000-000000000002');
INSERT INTO login_invitation (code_hash, account_id, created_at, expires_at) VALUES
    ('invented-code-hash', '00000000-0000-4000-8000-0000000000a2', '2026-01-05T08:01:00Z', '2026-01-12T08:01:00Z');
INSERT INTO login_throttle (subject, failures, last_failure) VALUES ('somebody', 2, '2026-01-05T09:00:00Z');
INSERT INTO organisation (tenant_id, name, created_at) VALUES
    ('00000000-0000-4000-8000-000000000001', 'Norrvale', '2026-01-05T08:00:00Z'),
    ('00000000-0000-4000-8000-000000000002', 'Sankt Orlin', '2026-01-05T08:00:00Z');
INSERT INTO programme (tenant_id, id, name, zone, created_at) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000011', 'Filtration', 'Europe/London', '2026-01-05T08:00:00Z');
INSERT INTO site (tenant_id, id, code, name, zone) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000021', 'OEI', 'Eye Institute', 'Europe/London');
INSERT INTO person (tenant_id, id, account_id, printed_name, created_at) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000031', '00000000-0000-4000-8000-0000000000a1', E'Dr Ottilie Brannock', '2026-01-05T08:00:00Z'),
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000032', '00000000-0000-4000-8000-0000000000a2', E'Fenna Hällinør-Łuk 金 \U0001F441', '2026-01-05T08:00:00Z'),
    ('00000000-0000-4000-8000-000000000002', '00000000-0000-4000-8000-000000000031', '00000000-0000-4000-8000-0000000000a1', 'Ottilie Brannock', '2026-01-05T08:00:00Z'),
    ('00000000-0000-4000-8000-000000000002', '00000000-0000-4000-8000-000000000033', NULL, E'tab\there, line\nthere, back\\slash, \\N and \\.', '2026-01-05T08:00:00Z');
INSERT INTO programme_role (tenant_id, id, programme_id, person_id, role, granted_at) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000041', '00000000-0000-4000-8000-000000000011', '00000000-0000-4000-8000-000000000031', 'SUPERVISOR', '2026-01-05T08:00:00Z'),
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000042', '00000000-0000-4000-8000-000000000011', '00000000-0000-4000-8000-000000000032', 'TRAINEE', '2026-01-05T08:00:00Z');
INSERT INTO rubric_version (tenant_id, id, procedure_code, version, title, family, content, content_hash, published_at, published_by) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000051', 'TRAB_FORNIX', '1.0', 'Small procedure', 'TRABECULECTOMY', E'{"steps":\n["S1"]}', repeat('0', 64), '2026-01-05T08:00:00Z', '00000000-0000-4000-8000-000000000031');
INSERT INTO rubric_step (tenant_id, rubric_version_id, step_code, position, phase, critical, name) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000051', 'S1', 1, 'FLAP', true, 'Step S1'),
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000051', 'S2', 2, 'FLAP', false, '');
-- The case whose id sorts first points at one that sorts last: rows cannot simply be loaded in order.
INSERT INTO surgical_case (tenant_id, id, programme_id, site_id, reference, kind, procedure_code, eye, state, planned_supervision, band, complexity_set_at, complexity_set_late, ended_at, ended_zone, logged_by, logged_at) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000069', '00000000-0000-4000-8000-000000000011', '00000000-0000-4000-8000-000000000021', 'K7-204', 'OPERATION', 'TRAB_FORNIX', 'LEFT', 'ENDED', 'SCRUBBED', 'A', '2026-01-06T08:00:00Z', false, '2026-01-06T10:00:00Z', 'Europe/London', '00000000-0000-4000-8000-000000000032', '2026-01-06T11:00:00Z');
INSERT INTO surgical_case (tenant_id, id, programme_id, site_id, reference, kind, procedure_code, eye, state, planned_supervision, band, complexity_set_at, complexity_set_late, ended_at, ended_zone, second_eye_of, logged_by, logged_at) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000061', '00000000-0000-4000-8000-000000000011', '00000000-0000-4000-8000-000000000021', 'K7-205', 'OPERATION', 'TRAB_FORNIX', 'RIGHT', 'ENDED', 'SCRUBBED', 'A', '2026-01-06T08:00:00Z', false, '2026-01-06T12:00:00Z', 'Europe/London', '00000000-0000-4000-8000-000000000069', '00000000-0000-4000-8000-000000000032', '2026-01-06T13:00:00Z');
INSERT INTO case_trainee (tenant_id, case_id, trainee_id, claimed_part) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000061', '00000000-0000-4000-8000-000000000032', 'WHOLE_CASE');
INSERT INTO score_sheet (tenant_id, id, case_id, trainee_id, scorer_id, rubric_version_id, state, confirmed_part, given_supervision, opened_at) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000071', '00000000-0000-4000-8000-000000000061', '00000000-0000-4000-8000-000000000032', '00000000-0000-4000-8000-000000000031', '00000000-0000-4000-8000-000000000051', 'SIGNED', 'WHOLE_CASE', 'SCRUBBED', '2026-01-06T13:00:00Z');
INSERT INTO sheet_measure (tenant_id, sheet_id, step_code, measure_code, value, recorded_at) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000071', 'S1', 'MINUTES', 4.250, '2026-01-06T13:10:00Z');
INSERT INTO signed_sheet (tenant_id, id, sheet_id, version_no, content, content_hash, signer_id, signer_name, signer_role, meaning, signed_at, signed_zone, received_at, programme_id, site_id, case_id, case_ended_at, trainee_id, rubric_version_id, procedure_code, band, confirmed_part, given_supervision, verdict, late) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000081', '00000000-0000-4000-8000-000000000071', 1, E'{"level":4,"text":"thin\\nflap"}', repeat('a', 64), '00000000-0000-4000-8000-000000000031', 'Dr Ottilie Brannock', 'SUPERVISOR', 'signature.meaning.OBSERVED_AND_SCORED', '2026-01-06T13:20:00Z', 'Europe/London', '2026-01-06T13:20:00Z', '00000000-0000-4000-8000-000000000011', '00000000-0000-4000-8000-000000000021', '00000000-0000-4000-8000-000000000061', '2026-01-06T12:00:00Z', '00000000-0000-4000-8000-000000000032', '00000000-0000-4000-8000-000000000051', 'TRAB_FORNIX', 'A', 'WHOLE_CASE', 'SCRUBBED', 'INDEPENDENT', false);
INSERT INTO signed_step (tenant_id, signed_sheet_id, step_code, critical, state, level, cause) VALUES
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000081', 'S1', true, 'SCORED', 4, NULL),
    ('00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000081', 'S2', false, 'BY_SUPERVISOR', NULL, 'PLAN');
