/** The interface to read: one page, no assets from elsewhere, drawn from openapi.json. */
export const DOCS_PAGE = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Wallcourse: the API</title>
<style>
  body { font: 16px/1.5 system-ui, sans-serif; margin: 2rem auto; max-width: 60rem; padding: 0 1rem; color: #1c2430; background: #fff; }
  h1 { margin-bottom: 0; } h2 { margin-top: 2.5rem; border-bottom: 1px solid #c9d1dc; }
  details { border: 1px solid #dde3ea; border-radius: 6px; margin: .5rem 0; padding: .4rem .8rem; }
  summary { cursor: pointer; } code, pre { font: 13px/1.45 ui-monospace, monospace; }
  pre { background: #f4f6f9; padding: .8rem; overflow: auto; border-radius: 6px; }
  .method { display: inline-block; min-width: 3.5rem; font-weight: 600; }
  .roles { color: #5a6675; font-size: .85rem; }
</style>
</head>
<body>
<h1>Wallcourse</h1>
<p id="about"></p>
<p>Send <code>Authorization: Bearer &lt;token&gt;</code>. Refusals are <code>application/problem+json</code>. The whole document: <a href="openapi.json">openapi.json</a>.</p>
<main id="routes"></main>
<h2>Shapes</h2>
<div id="shapes"></div>
<script>
const make = (tag, text, parent, className) => {
  const element = document.createElement(tag);
  element.textContent = text;
  if (className) element.className = className;
  parent.append(element);
  return element;
};
const shown = (value) => JSON.stringify(value, null, 2);
fetch('openapi.json').then((answer) => answer.json()).then((api) => {
  document.getElementById('about').textContent = api.info.description;
  const groups = new Map();
  for (const [path, methods] of Object.entries(api.paths)) {
    for (const [method, operation] of Object.entries(methods)) {
      const group = (operation.tags || ['service'])[0];
      if (!groups.has(group)) groups.set(group, []);
      groups.get(group).push({ path, method, operation });
    }
  }
  const routes = document.getElementById('routes');
  for (const [group, operations] of groups) {
    make('h2', group, routes);
    for (const { path, method, operation } of operations) {
      const box = make('details', '', routes);
      const head = make('summary', '', box);
      make('span', method.toUpperCase(), head, 'method');
      make('code', path, head);
      make('span', '  ' + (operation.summary || ''), head);
      if (operation['x-roles']) make('p', 'Roles: ' + operation['x-roles'].join(', '), box, 'roles');
      if (operation.parameters && operation.parameters.length) make('pre', shown(operation.parameters), box);
      if (operation.requestBody) make('pre', shown(operation.requestBody), box);
      make('pre', shown(operation.responses), box);
    }
  }
  const shapes = document.getElementById('shapes');
  for (const [name, schema] of Object.entries(api.components.schemas)) {
    const box = make('details', '', shapes);
    make('code', name, make('summary', '', box));
    make('pre', shown(schema), box);
  }
});
</script>
</body>
</html>
`;
