// What logging a case needs without a network: forms and steps, fetched while there is one and renewed when they changed.
const main = async (path, mark) => {
  const response = await fetch(path, { cache: "no-store", redirect: "manual" });
  const page = response.status === 200 ? new DOMParser().parseFromString(await response.text(), "text/html") : null;
  const found = page?.querySelector(`main[data-case-log="${mark}"]`);
  found?.querySelectorAll("input[name=_csrf]").forEach((token) => token.remove());
  return found?.outerHTML ?? null;
};

const refreshSteps = async (store, procedure, version) => {
  const place = `steps ${procedure}`;
  const html = (await store.kept(place))?.version === version ? null : await main(`/at-the-table/case-steps/${procedure}`, procedure);
  if (html) {
    await store.keep(place, { version, html });
  }
};

const refreshForm = async (store, log) => {
  const place = `form ${log.programme}`;
  const here = await store.kept(place);
  const html = here?.shape === log.shape ? null : await main(`/at-the-table/case-log/${log.programme}`, log.programme);
  if (html) {
    await store.keep(place, { ...log, html });
  }
};

// Forms first and shown at once, since they are enough to begin with. A programme this person is no trainee of any more
// goes, unless a case of it is still here.
export const refreshCaseLog = async (store, transport, show) => {
  const list = await transport.get("/at-the-table/case-log", "case-log");
  if (!list) {
    return;
  }
  for (const log of list.programmes) {
    await refreshForm(store, log);
  }
  await show();
  for (const [procedure, version] of list.programmes.flatMap(({ rubrics }) => Object.entries(rubrics))) {
    await refreshSteps(store, procedure, version);
  }
  const needed = [...list.programmes, ...(await store.all("item "))].map((one) => one.programme);
  for (const { programme } of await store.all("form ")) {
    if (!needed.includes(programme)) {
      await store.drop(`form ${programme}`);
    }
  }
};
