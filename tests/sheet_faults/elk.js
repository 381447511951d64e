// Lays graphs out with elkjs, a general-purpose layered graph engine. Standard input: a list of graphs
// in its JSON format; standard output: the same with places. ELKJS: a folder in which
// `npm install elkjs` was run.
const ELK = require(require.resolve("elkjs", { paths: [process.env.ELKJS || "."] }));

let text = "";
process.stdin.on("data", (piece) => { text += piece; });
process.stdin.on("end", async () => {
  const placed = [];
  for (const graph of JSON.parse(text)) placed.push(await new ELK().layout(graph));
  process.stdout.write(JSON.stringify(placed));
});
