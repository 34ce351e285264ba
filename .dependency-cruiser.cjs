const stages = ['schedule', 'takeoff', 'reinforcement', 'checks', 'bars', 'ticket', 'quote'];
const order = stages.map((stage, index) => ({
  name: `stage-order-${stage}`,
  comment: 'A stage imports only foundations and stages to its left: schedule, takeoff, reinforcement, checks, bars, ticket, quote.',
  severity: 'error',
  from: { path: `^src/domain/${stage}/` },
  to: { path: `^src/domain/(${[...stages.slice(index + 1), 'history', 'drawing', 'checklist'].join('|')})/` },
}));
module.exports = {
  forbidden: [
    { name: 'no-circular', comment: 'A cycle means two files are one file.', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'domain-is-pure',
      comment: 'The domain knows no framework, no database, no files, no environment: it must run anywhere and always answer the same.',
      severity: 'error',
      from: { path: '^src/domain/' },
      to: { path: '^(src/(modules|platform|commands)/|node_modules/(@nestjs|pg|fastify|graphile-worker|pino|piscina))|^(fs|path|crypto|os|child_process|worker_threads|http|net|process)$|^node:(fs|path|crypto|os|child_process|worker_threads|http|net|process)' },
    },
    {
      name: 'foundations-know-no-stage',
      comment: 'Foundations are imported by any stage and import none.',
      severity: 'error',
      from: { path: '^src/domain/(quantity|evidence|geometry|engineering|cutting|advice|range)/' },
      to: { path: `^src/domain/(${[...stages, 'history', 'drawing', 'checklist'].join('|')})/` },
    },
    { name: 'geometry-knows-no-trade', comment: 'Points, segments and polygons have no trade words.', severity: 'error', from: { path: '^src/domain/geometry/' }, to: { path: '^src/domain/(?!geometry/|quantity/)' } },
    ...order,
    { name: 'only-the-pipeline-sees-all', comment: 'One file composes the stages.', severity: 'error', from: { path: '^src/domain/', pathNot: '^src/domain/pipeline' }, to: { path: '^src/domain/pipeline' } },
    { name: 'one-door', comment: 'Only platform speaks to the database and the queue: everything else goes through Database.transaction, with tenant, version and history.', severity: 'error', from: { path: '^src/', pathNot: '^src/(platform|commands)/' }, to: { path: '^node_modules/(pg|pg-pool|graphile-worker|piscina)/' } },
    { name: 'measured-in-one-place', comment: 'Only modules/takeoffs measures and only modules/quotes prices: a number has one origin.', severity: 'error', from: { path: '^src/modules/(?!takeoffs/|quotes/)' }, to: { path: '^src/domain/pipeline' } },
    { name: 'siblings-not-by-their-routes', comment: 'A module speaks to another through its service or, within one commit, its repository; never through its routes.', severity: 'error', from: { path: '^src/modules/([^/]+)/' }, to: { path: '^src/modules/[^/]+/.*[.](controller|resolver)[.]', pathNot: '^src/modules/$1/' } },
    { name: 'platform-knows-no-module', comment: 'Platform serves every module and depends on none.', severity: 'error', from: { path: '^src/platform/' }, to: { path: '^src/modules/' } },
    { name: 'no-orphan-test-imports', comment: 'The program never imports its tests.', severity: 'error', from: { path: '^src/' }, to: { path: '^test/' } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.json' },
    exclude: { path: 'dist/' },
    enhancedResolveOptions: { extensions: ['.ts', '.js', '.mjs', '.json'] },
  },
};
